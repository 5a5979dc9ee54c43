// Resistance readings of one part: one value a cylinder, with what a hand-held meter can tell.
import { cylindersOf } from '../engine/relations.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { toLength } from '../units/convert.ts'
import type { ResistanceEntry } from './ignition-entries.ts'
import { median, rangeOf, tidy } from './middle.ts'

export type ResistancePart = ResistanceEntry['part']

type Resistance = {
  cylinder: number
  part: ResistancePart
  /** Length of a lead in feet. */
  feet?: number
  specified?: { minimum: number; maximum: number }
}

/** `ohms` is the middle of the readings, `plusMinus` what the meter or their range leaves open. */
export type ReadResistance = Resistance & { ohms: number; plusMinus: number }

/** An open circuit has no ohms. */
export type OpenResistance = Resistance & { ohms: null }

/** A hand-held meter in ohms: 1 percent of what it shows, and 0.2 ohm for its own leads. Common practice. */
const meter = { percent: 1, leads: 0.2 } as const

/** One value a cylinder and part, of cylinders that the engine has. Open in one reading is open: breaks move. */
export function resistanceValues(job: Job, stage: Stage): (ReadResistance | OpenResistance)[] {
  const here = new Set(cylindersOf(job.layout))
  const groups = new Map<string, PullOf<'resistance'>[]>()
  for (const pull of validPulls(job, 'resistance', stage)) {
    if (!here.has(pull.cylinder)) continue
    const key = `${pull.cylinder} ${pull.entry.part}`
    groups.set(key, [...(groups.get(key) ?? []), pull])
  }
  return [...groups.values()].flatMap(pulls => valueOf(pulls, job))
}

function valueOf(
  pulls: readonly PullOf<'resistance'>[],
  { instruments }: Pick<Job, 'instruments'>,
): (ReadResistance | OpenResistance)[] {
  const [first] = pulls
  const entries = pulls.map(pull => pull.entry)
  const open = entries.some(entry => entry.open === true)
  const read = entries.flatMap(({ ohms }) => (ohms === undefined ? [] : [ohms]))
  if (first === undefined || (!open && read.length === 0)) return []
  const feet = entries.flatMap(({ length }) => (length === undefined ? [] : [toLength(length, 'in') / 12]))
  const ranges = entries.flatMap(({ specified }) => (specified ? [specified] : []))
  const what: Resistance = {
    cylinder: first.cylinder,
    part: first.entry.part,
    ...(feet.length > 0 ? { feet: tidy(median(feet)) } : {}),
    ...(ranges.length > 0
      ? {
          specified: {
            minimum: Math.max(...ranges.map(one => one.minimum)),
            maximum: Math.min(...ranges.map(one => one.maximum)),
          },
        }
      : {}),
  }
  if (open) return [{ ...what, ohms: null }]
  const percents = pulls.map(
    pull => instruments?.find(one => one.id === pull.instrument)?.accuracyPercent ?? meter.percent,
  )
  const ohms = median(read)
  const byMeter = (ohms * Math.max(...percents)) / 100 + meter.leads
  return [{ ...what, ohms, plusMinus: Math.max(byMeter, rangeOf(read) / 2) }]
}
