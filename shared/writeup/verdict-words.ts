// Verdicts in the short form that stands in a table cell, and the limits as notes under the table.
import { valueWords } from '../diagnosis/gauge-evidence.ts'
import type { GaugeVerdict } from '../gauges/verdict.ts'

export const none = '\u2013'

/** "share of highest 66 ± 2 %: outside" for every rule of a cylinder that is not simply met. */
export function cylinderWords(verdicts: readonly GaugeVerdict[], cylinder: number): string {
  const mine = verdicts.filter(one => one.cylinder === cylinder && one.verdict !== 'noted')
  const notable = mine.filter(one => one.verdict !== 'within')
  if (mine.length === 0) return none
  if (notable.length > 0)
    return notable.map(one => `${one.rule} ${valueWords(one)}: ${one.verdict}`).join('; ')
  return mine.every(one => one.about === 'reading') ? 'repeats; nothing to compare with' : 'within limits'
}

/** Each limit once, with where it was read. */
export const limitNotes = (verdicts: readonly GaugeVerdict[]): string[] => [
  ...new Set(
    verdicts.filter(one => one.rule !== 'wet rise').map(one => `${one.rule}: ${one.limit} [${one.source}].`),
  ),
]

/** What oil did in the wet pull of one cylinder; it judges nothing and tells rings from valves. */
export const wetFacts = (verdicts: readonly GaugeVerdict[], cylinder: number): string[] =>
  verdicts
    .filter(one => one.rule === 'wet rise' && one.cylinder === cylinder)
    .map(one => `wet pull: rise ${valueWords(one)}. ${one.why}`)

/** The same for a whole table, with the caution that belongs to it. */
export function wetNotes(verdicts: readonly GaugeVerdict[]): string[] {
  const wet = verdicts.filter(one => one.rule === 'wet rise')
  return [
    ...wet.map(one => `Wet pull, cylinder ${one.cylinder}: rise ${valueWords(one)}. ${one.why}`),
    ...(wet[0] ? [`Wet pull: ${wet[0].limit} [${wet[0].source}].`] : []),
  ]
}
