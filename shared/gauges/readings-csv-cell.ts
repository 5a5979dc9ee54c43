// Cells of a CSV file that is safe to open in a spreadsheet.

/** What a spreadsheet would run as a formula, a tab or line end in front of one included. */
const startsFormula = /^[\t\r\n ]*[=+\-@]/

const isNumber = (text: string): boolean => /^-?\d+(\.\d+)?$/.test(text)

/**
 * One cell as written: quoted where it must be, and text that would begin a formula gets an apostrophe in front. A plain
 * number keeps its minus sign.
 */
export function csvCell(text: string): string {
  const safe = startsFormula.test(text) && !isNumber(text) ? `'${text}` : text
  return /[",;\r\n\t']/.test(safe) || safe !== safe.trim() ? `"${safe.replaceAll('"', '""')}"` : safe
}

/** Rows to text, lines ended as RFC 4180 says. */
export const csvText = (rows: readonly (readonly string[])[]): string =>
  rows.map(row => `${row.map(csvCell).join(',')}\r\n`).join('')
