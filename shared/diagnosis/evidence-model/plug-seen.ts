// What the readings of the plugs say. Colours that mean two things alike (pale, dark) count through the condition alone.
import type { Job } from '../../job/job-schema.ts'
import { validPulls } from '../../job/current.ts'
import type { Stage } from '../../job/tray-schema.ts'
import { conditions } from '../../plug/condition.ts'
import { type PlugReading, plugReadings } from '../plug-evidence.ts'
import { named, type Seen, sure } from './seen.ts'

/** Two plugs of one cylinder are two looks at the same thing: the first one read counts for the condition. */
export function plugSeen(job: Job, stage: Stage): Seen[] {
  const additive = validPulls(job, 'observation', stage).some(
    ({ entry }) => entry.seen === 'fuel with metallic additive' && entry.answer === 'yes',
  )
  const readings = plugReadings(job, stage)
  const cylinders = [...new Set(readings.map(one => one.slot.cylinder))]
  return cylinders.flatMap(cylinder => {
    const first = readings.find(one => one.slot.cylinder === cylinder)
    return first ? seenOn(first, additive) : []
  })
}

function seenOn({ slot, reading }: PlugReading, additive: boolean): Seen[] {
  const { cylinder } = slot
  const { condition, details } = reading
  const { deposits = [], insulatorDamage, electrodeWear, oilInWell, insulatorColour } = details
  const from = 'plug' as const
  const outside =
    deposits.length > 0 && deposits.every(one => one.place === 'well' || one.place === 'outer body')
  const seen: Seen[] = []
  const add = (finding: string, weights: readonly number[]): void => {
    seen.push({ finding, cylinder, from, weights })
  }
  // Oil that lies outside alone says nothing of the chamber.
  if (condition !== undefined && !(condition === 'oil-wetted' && outside))
    add('plug condition', named(conditions, condition))
  if (insulatorDamage !== undefined) add('insulator', sure(damageAt[insulatorDamage], 4))
  if (electrodeWear !== undefined) add('electrodes', sure(wearAt[electrodeWear], 3))
  const oilOutside = deposits.some(
    one => one.place === 'well' && (one.kind === 'wet oil' || one.kind === 'baked oil'),
  )
  if (oilInWell !== undefined || oilOutside) add('oil in the well', sure(oilInWell || oilOutside ? 1 : 0, 2))
  if (insulatorColour === 'rust red' && !additive) add('rust red', sure(1, 2))
  if (deposits.some(one => one.kind === 'specks' || one.kind === 'metal spray'))
    add('specks or metal on the nose', sure(1, 2))
  return seen
}

const damageAt = {
  none: 0,
  'cracked nose': 1,
  'broken nose': 1,
  'cracked upper': 1,
  blistered: 2,
  'flashover track': 3,
} as const
const wearAt = { sharp: 0, rounded: 0, 'worn out': 1, melted: 2, bent: 2 } as const
