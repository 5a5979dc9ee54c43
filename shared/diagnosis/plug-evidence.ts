// What the plugs of one cylinder say at one stage: the latest reading of each slot.
import { slotKey } from '../engine/slots.ts'
import type { SlotAddress } from '../job/command-schema.ts'
import { currentReading } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Reading, Slot, Stage } from '../job/tray-schema.ts'
import { meaningsOf } from '../plug/reading-meaning.ts'
import type { Evidence } from './evidence.ts'

const addressOf = ({ cylinder, plug }: Slot): SlotAddress => (plug ? { cylinder, plug } : { cylinder })

export type PlugReading = { slot: SlotAddress; reading: Reading }

/** One a slot that has been read at this stage: where plugs came out twice, the later tray counts. */
export function plugReadings(job: Job, stage: Stage): PlugReading[] {
  const latest = new Map<string, PlugReading>()
  const trays = job.trays
    .filter(tray => tray.stage === stage)
    .toSorted((a, b) => Date.parse(a.createdAt) - Date.parse(b.createdAt))
  for (const slot of trays.flatMap(tray => tray.slots)) {
    const reading = currentReading(slot)
    const address = addressOf(slot)
    if (reading) latest.set(slotKey(address), { slot: address, reading })
  }
  return [...latest.values()]
}

/** Evidence of one cylinder's plugs. */
export function plugEvidence(readings: readonly PlugReading[], cylinder: number): Evidence[] {
  return readings
    .filter(one => one.slot.cylinder === cylinder)
    .flatMap(({ slot, reading }) =>
      meaningsOf(reading).map(({ state, of, text, plain, next, source }) => ({
        from: 'plug' as const,
        state,
        text: slot.plug ? `Plug ${slot.plug}: ${text}` : text,
        headline: headlineOf(text),
        plain,
        next,
        source,
        of,
        slot,
      })),
    )
}

/** The words before the explanation. */
const headlineOf = (text: string): string => (/^[^:;,.]+/.exec(text)?.[0] ?? text).trim()
