// Finds jobs by words: every word typed must occur somewhere in the line, whatever the case and the accents.
import type { JobSummary } from '../contract/summary-schema.ts'

/** Lower case without accents, so that "bujia" finds "Bujía". */
export const folded = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()

const haystacks = new WeakMap<JobSummary, string>()

function haystackOf(summary: JobSummary): string {
  const known = haystacks.get(summary)
  if (known !== undefined) return known
  const words = folded(
    [
      summary.vehicle,
      summary.complaint,
      summary.vin,
      summary.technician,
      summary.layoutName,
      summary.createdAt.slice(0, 10),
    ].join('\n'),
  )
  haystacks.set(summary, words)
  return words
}

/** Keeps the order of the list; an empty text finds all. */
export function searchSummaries(summaries: readonly JobSummary[], text: string): JobSummary[] {
  const words = folded(text)
    .split(/\s+/)
    .filter(word => word !== '')
  return words.length === 0
    ? [...summaries]
    : summaries.filter(summary => words.every(word => haystackOf(summary).includes(word)))
}
