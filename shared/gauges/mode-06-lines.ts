// One pasted line of a service 06 answer: its CAN id, if it has one, and its bytes.

export type PastedLine = {
  /** From 1, as the person sees it. */
  line: number
  /** CAN id as 3 or 8 hexadecimal digits. */
  from?: string
  bytes: readonly number[]
}

export type LineProblem = { line: number; reason: string }

export const hexByte = (byte: number): string => byte.toString(16).toUpperCase().padStart(2, '0')

/** Every line with hexadecimal in it; what is no hexadecimal is a problem of its line. Empty lines are passed over. */
export function readLines(text: string): { lines: PastedLine[]; problems: LineProblem[] } {
  const lines: PastedLine[] = []
  const problems: LineProblem[] = []
  text.split(/\r\n|\r|\n/).forEach((raw, i) => {
    const line = i + 1
    const words = raw
      .replaceAll(/\b0x/gi, '')
      .replaceAll(/\[\d\]/g, ' ')
      .split(/[\s,;#>]+/)
      .filter(word => word !== '')
    if (words.length === 0) return
    const strange = words.find(word => !/^[0-9A-F]+$/i.test(word))
    if (strange !== undefined) {
      problems.push({ line, reason: `"${strange.slice(0, 20)}" is not hexadecimal` })
      return
    }
    const { from, digits } = splitId(words.map(word => word.toUpperCase()))
    if (digits.length === 0 || digits.length % 2 === 1)
      problems.push({ line, reason: 'half a byte: the hexadecimal digits do not pair up' })
    else lines.push({ line, ...(from === undefined ? {} : { from }), bytes: bytesOf(digits) })
  })
  return { lines, problems }
}

const bytesOf = (digits: string): number[] =>
  (digits.match(/../g) ?? []).map(pair => Number.parseInt(pair, 16))

/** An 11-bit id has three digits; a 29-bit id of an engine module answering a tester begins 18DAF1. */
function splitId(words: readonly string[]): { from?: string; digits: string } {
  const [first = '', ...rest] = words
  const all = words.join('')
  if (first.length === 3) return { from: first, digits: withoutCount(rest).join('') }
  if (first.length === 8 && rest.length > 0) return { from: first, digits: withoutCount(rest).join('') }
  if (/^18D[AB]/.test(all) && all.length > 8) return { from: all.slice(0, 8), digits: all.slice(8) }
  if (all.startsWith('000007') && all.length > 8) return { from: all.slice(5, 8), digits: all.slice(8) }
  if (words.length === 1 && all.length % 2 === 1 && all.length > 3)
    return { from: all.slice(0, 3), digits: all.slice(3) }
  return { digits: all }
}

/** Some listings write the number of bytes between id and bytes, as one digit. */
const withoutCount = (words: readonly string[]): readonly string[] =>
  words[0]?.length === 1 ? words.slice(1) : words
