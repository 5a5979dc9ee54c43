// What is said beside the contributions to crank speed: which cylinder is low, what spoiled the recording, what to do.
import type { Layout } from '../engine/layout-schema.ts'
import { lowestOne } from './lowest.ts'
import type { PositionValue, Remark } from './recording.ts'
import { syncRemarks } from './sync-remarks.ts'
import type { SyncReading } from './sync-pulses.ts'
import type { ToothErrors } from './tooth-errors.ts'

export type CrankFacts = {
  layout: Layout
  reading: SyncReading | null
  /** Null where the recording has no teeth. */
  errors: ToothErrors | null
  /** Percent points that uneven teeth may make. */
  doubt: number
  spoiled: number
  cycles: number
  kept: number
  values: PositionValue[]
  rpm: number
  rise: number
}

export function crankRemarks(facts: CrankFacts): Remark[] {
  const { layout, reading, errors, doubt, spoiled, cycles, kept, values, rpm } = facts
  const remarks: Remark[] = [...syncRemarks(layout, reading)]
  const lowest = lowestOne(values)
  if (lowest) {
    const who =
      lowest.cylinder === null
        ? `One cylinder adds least, position ${lowest.position} in firing order from the first stroke marked`
        : `Cylinder ${lowest.cylinder} adds least`
    remarks.push({ code: 'lowest', text: `${who}: ${Math.round(lowest.percent)} % of the mean.` })
  }
  if (errors?.separated) {
    remarks.push({
      code: 'teeth corrected',
      text: 'What repeats every turn and stays the same share of the speed was taken out as unequal teeth.',
    })
  } else if (errors && doubt > 3) {
    remarks.push({
      code: 'uneven teeth',
      text: `The wheel's teeth are uneven by ${(100 * errors.unevenness).toFixed(2)} %, which can move a share by ${Math.round(doubt)} points; the intervals hold it. Cylinders that fire one turn apart are affected alike. A recording with idle and a raised idle lets the teeth be taken out.`,
    })
  }
  if (spoiled > 0) {
    remarks.push({
      code: 'turns left out',
      text: `${spoiled} turns have lost or added teeth and are left out. Check the sensor's gap and leads.`,
    })
  }
  if (kept < cycles) {
    remarks.push({
      code: 'cycles left out',
      text: `${cycles - kept} of ${cycles} cycles are left out: samples are missing in them.`,
    })
  }
  if (kept < 20) {
    remarks.push({
      code: 'few cycles',
      text: `Only ${kept} cycles could be used. Record ten seconds or more of steady idle.`,
    })
  }
  if (rpm > 1500) {
    remarks.push({
      code: 'not idle',
      text: `The mean speed was ${Math.round(rpm)} rpm: differences between cylinders show best at idle.`,
    })
  }
  return remarks
}
