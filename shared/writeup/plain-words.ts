// Findings for people who were not there: no jargon, no more certainty than there is.
import type { CylinderState } from '../diagnosis/condition-map.ts'
import { inWords } from '../gauges/shown.ts'

const numbered = (cylinders: readonly number[]): string =>
  `${cylinders.length > 1 ? 'Cylinders' : 'Cylinder'} ${inWords(cylinders)}`

/** What stands out is only of the well. */
const wellOnly = (one: CylinderState): boolean =>
  one.state === 'watch' &&
  one.evidence.filter(evidence => evidence.state !== 'sound').every(evidence => evidence.of === 'well')

/** One to four sentences that open a report. */
export function summaryOf(states: readonly CylinderState[]): string[] {
  const of = (wanted: (one: CylinderState) => boolean) => states.filter(wanted).map(one => one.cylinder)
  const fault = of(one => one.state === 'fault')
  const well = of(wellOnly)
  const watch = of(one => one.state === 'watch' && !wellOnly(one))
  const unknown = of(one => one.state === 'unknown')
  const sound = of(one => one.state === 'sound')
  const verb = (cylinders: readonly number[], one: string, several: string) =>
    cylinders.length > 1 ? several : one
  return [
    ...(fault.length > 0 ? [`${numbered(fault)} ${verb(fault, 'shows a fault', 'show faults')}.`] : []),
    ...(watch.length > 0
      ? [`${numbered(watch)} ${verb(watch, 'needs', 'need')} watching or another test.`]
      : []),
    ...(well.length > 0
      ? [
          `In cylinder ${inWords(well)} the finding is around the outside of the plug, not inside the cylinder.`,
        ]
      : []),
    ...(sound.length > 0 ? [`${numbered(sound)} showed nothing wrong in what was checked.`] : []),
    ...(unknown.length > 0 ? [`Nothing is recorded for cylinder ${inWords(unknown)}.`] : []),
  ]
}

const plainStates: Readonly<Record<CylinderState['state'], string>> = {
  fault: 'shows a fault.',
  watch: 'needs watching.',
  sound: 'showed nothing wrong in what was checked.',
  unknown: 'was not checked.',
}

/** For the customer: the state in a sentence, then each thing that shows it, once. Of a test only the worst. */
export function customerLines(one: CylinderState): string[] {
  const notable = one.evidence.filter(evidence => evidence.state !== 'sound')
  const told = notable.filter(
    (evidence, at) =>
      evidence.from === 'plug' || notable.findIndex(other => other.from === evidence.from) === at,
  )
  const opening = wellOnly(one)
    ? 'itself showed nothing wrong; the finding is outside it.'
    : plainStates[one.state]
  return [
    `Cylinder ${one.cylinder} ${opening}`,
    ...new Set(told.map(evidence => evidence.plain).filter(plain => plain !== '')),
  ]
}

/** For the shop: what is notable in full with its source, what is noted, the next check; what is in order in one line. */
export function shopLines(one: CylinderState, noted: readonly string[]): string[] {
  const notable = one.evidence.filter(evidence => evidence.state !== 'sound')
  const loud = new Set(notable.map(evidence => evidence.from))
  const quiet = new Set(one.evidence.map(evidence => evidence.from).filter(from => !loud.has(from)))
  const next = [...new Set(notable.map(evidence => evidence.next).filter(text => text !== ''))]
  const lines = [
    ...notable.map(evidence => `${evidence.from}: ${evidence.text} [${evidence.source}]`),
    ...noted,
    ...(next.length > 0 ? [`Next: ${next.join(' ')}`] : []),
    ...(quiet.size > 0 ? [`In order: ${[...quiet].join(', ')}.`] : []),
  ]
  return lines.length > 0 ? lines : ['Nothing is recorded.']
}
