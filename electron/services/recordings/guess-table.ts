// Finds out how a recording's text is laid out: what separates columns, how decimals are written, where samples begin.
import type { RecordingMapping, RecordingWritten } from '../../../shared/contract/recordings-contract.ts'

export type Table = {
  separator: RecordingMapping['separator']
  decimal: RecordingMapping['decimal']
  /** Number of the first line with samples, from 1. */
  firstLine: number
  /** Fields of each sample line seen. */
  rows: string[][]
  /** Fields of the lines above that name the columns; empty where there are none. */
  names: string[]
  units: string[]
  /** Lines above the samples. */
  above: string[]
}

const signs = { tab: '\t', semicolon: ';', comma: ',', space: /\s+/ } as const
const point = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/
const comma = /^[+-]?(\d+,?\d*|,\d+)([eE][+-]?\d+)?$/
const missing = /^(|-+|nan|null|n\/?a|[+-]?inf(inity)?|ol|[+-]?∞)$/i
const comment = /^(#|%|\/\/)/

export const isNumber = (field: string, decimal: Table['decimal']): boolean =>
  (decimal === 'comma' ? comma : point).test(field)

export const fieldsOf = (line: string, separator: Table['separator']): string[] =>
  (separator === 'space' ? line.trim() : line).split(signs[separator]).map(field =>
    field
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  )

/** Lines that hold samples: as many columns as the others, numbers or missing in each, one number at least. */
function sampleRun(lines: readonly string[], separator: Table['separator'], decimal: Table['decimal']) {
  const looks = lines.map(line => {
    if (line.trim() === '' || comment.test(line)) return null
    const fields = fieldsOf(line, separator)
    const numbers = fields.filter(field => isNumber(field, decimal)).length
    const known = fields.every(field => isNumber(field, decimal) || missing.test(field))
    return { fields, numbers: known ? numbers : 0 }
  })
  // Most lines of the beginning are samples: the commonest number of columns among them is theirs.
  const widths = new Map<number, number>()
  for (const look of looks) {
    if (look && look.numbers > 0) widths.set(look.fields.length, (widths.get(look.fields.length) ?? 0) + 1)
  }
  const [width, count] = [...widths].toSorted((a, b) => b[1] - a[1])[0] ?? [0, 0]
  // A header may hold a number or two: samples begin with two sample lines in a row.
  const isSample = (at: number) => (looks[at]?.numbers ?? 0) > 0 && looks[at]?.fields.length === width
  const first = looks.findIndex((_, at) => isSample(at) && (isSample(at + 1) || at + 1 >= lines.length))
  const rows = looks.flatMap((look, at) => (look && at >= first && isSample(at) ? [look.fields] : []))
  return { width, count, first, rows }
}

const choices = (['tab', 'semicolon', 'comma', 'space'] as const).flatMap(separator =>
  (['point', 'comma'] as const)
    .filter(decimal => !(separator === 'comma' && decimal === 'comma'))
    .map(decimal => ({ separator, decimal })),
)

/** Null where no line holds numbers. @param written how the person says it is written */
export function guessTable(lines: readonly string[], written?: RecordingWritten): Table | null {
  const tried = (written ? [written] : choices).map(choice => ({
    ...choice,
    ...sampleRun(lines, choice.separator, choice.decimal),
  }))
  const best = tried
    .filter(one => one.first >= 0)
    // More lines read as numbers first, then more columns; a point before a comma where both would do.
    .toSorted((a, b) => b.count * Math.min(2, b.width) - a.count * Math.min(2, a.width))[0]
  if (!best) return null
  const above = lines.slice(0, best.first)
  const titles = above
    .map(line => fieldsOf(line.replace(/^(#|%|\/\/)\s*/, ''), best.separator))
    .filter(fields => fields.length === best.width && fields.some(field => /\p{L}/u.test(field)))
  const last = titles.at(-1) ?? []
  const isUnits = titles.length > 1 && last.every(field => /^[([]?[\p{L}µμ%/°]{0,6}[)\]]?$/u.test(field))
  return {
    separator: best.separator,
    decimal: best.decimal,
    firstLine: best.first + 1,
    rows: best.rows,
    names: (isUnits ? titles.at(-2) : titles.at(-1)) ?? [],
    units: isUnits ? last : [],
    above,
  }
}
