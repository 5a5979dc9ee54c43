// Findings for people who were not there: no jargon, no more certainty than there is.
import type { CylinderState } from '../diagnosis/condition-map.ts'

const states: Record<CylinderState['state'], string> = {
  fault: 'shows a fault',
  watch: 'needs watching',
  sound: 'showed nothing wrong in what was checked',
  unknown: 'was not checked',
}

export const plainState = (one: CylinderState): string => `Cylinder ${one.cylinder} ${states[one.state]}.`

const list = (numbers: readonly number[]): string =>
  numbers.length < 2 ? numbers.join('') : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`

/** One to three sentences that open a report. */
export function summaryOf(states_: readonly CylinderState[]): string[] {
  const of = (state: CylinderState['state']) =>
    states_.filter(one => one.state === state).map(one => one.cylinder)
  const [fault, watch, unknown, sound] = [of('fault'), of('watch'), of('unknown'), of('sound')]
  const lines: string[] = []
  if (fault.length > 0)
    lines.push(`Cylinder ${list(fault)} ${fault.length > 1 ? 'show faults' : 'shows a fault'}.`)
  if (watch.length > 0) lines.push(`Cylinder ${list(watch)} ${watch.length > 1 ? 'need' : 'needs'} watching.`)
  if (fault.length === 0 && watch.length === 0 && sound.length > 0)
    lines.push('What was checked is in order.')
  if (unknown.length > 0) lines.push(`Nothing is recorded for cylinder ${list(unknown)}.`)
  return lines
}
