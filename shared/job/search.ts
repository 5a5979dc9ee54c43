// Search as you type over the job list: every word must be found somewhere in the line, whatever its case and accents.
import type { JobSummary } from '../contract/summary-schema.ts'

/** Letters that do not come apart into a plain letter and an accent; and the two small sigmas, which are one letter. */
const plain: Readonly<Record<string, string>> = {
  ς: 'σ',
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  ł: 'l',
  þ: 'th',
}
const special = new RegExp(`[${Object.keys(plain).join('')}]`, 'g')

/** Lower case without accents: "Ölpumpe" and "OLPUMPE" are the same; "ß" is "ss". */
export const folded = (text: string): string =>
  text
    .normalize('NFKD')
    // Through capitals first: some small letters (ß, ı) have no other way to meet their capital.
    .toUpperCase()
    .normalize('NFKD')
    .replaceAll(/\p{Mark}/gu, '')
    .toLowerCase()
    .replaceAll(/\p{Mark}/gu, '')
    .replaceAll(special, letter => plain[letter] ?? letter)

const textOf = ({ vehicle, complaint, vin, technician, layoutName, createdAt }: JobSummary): string =>
  folded([vehicle, complaint, vin, technician, layoutName, createdAt.slice(0, 10)].join('\n'))

/** Made once a summary: a summary is replaced, never altered, when its job changes. */
const haystacks = new WeakMap<JobSummary, string>()

const haystackOf = (summary: JobSummary): string => {
  const known = haystacks.get(summary)
  if (known !== undefined) return known
  const made = textOf(summary)
  haystacks.set(summary, made)
  return made
}

/**
 * The summaries that hold every word of `text`, in the order given; all of them when there is no word. Looked through
 * are vehicle, complaint, VIN, technician, engine and day of creation (as 2026-03-02).
 */
export const searchSummaries = (summaries: readonly JobSummary[], text: string): JobSummary[] => {
  const words = folded(text).split(/\s+/).filter(Boolean)
  return summaries.filter(summary => {
    const haystack = haystackOf(summary)
    return words.every(word => haystack.includes(word))
  })
}
