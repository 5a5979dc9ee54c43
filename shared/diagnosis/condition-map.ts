// The condition map: what is known of each cylinder, worst first, with the evidence behind it. Kept in this one place.
import { cylindersOf } from '../engine/relations.ts'
import { slotKey } from '../engine/slots.ts'
import { judgeAll } from '../gauges/gauges.ts'
import type { GaugeVerdict } from '../gauges/verdict.ts'
import { type ShownUnits, tradeUnits } from '../gauges/shown.ts'
import type { SlotAddress } from '../job/command-schema.ts'
import { currentReading } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { TestKind } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { meaningsOf } from '../plug/reading-meaning.ts'

export type State = 'sound' | 'watch' | 'fault' | 'unknown'

export type Evidence = {
  from: 'plug' | TestKind
  state: 'sound' | 'watch' | 'fault'
  text: string
  /** The plug it was read from. */
  slot?: SlotAddress
}

export type CylinderState = {
  cylinder: number
  state: State
  /** The most telling piece of evidence in a few words. */
  headline: string
  evidence: Evidence[]
}

const severity = { sound: 0, watch: 1, fault: 2 } as const

/** Worst of what is known; unknown where nothing is known. Voided pulls do not count. One entry a cylinder, by number. */
export function conditionMap(job: Job, stage: Stage, units: ShownUnits = tradeUnits): CylinderState[] {
  const verdicts = judgeAll(job, stage, units)
  return cylindersOf(job.layout)
    .toSorted((a, b) => a - b)
    .map(cylinder => {
      const evidence = [...plugEvidence(job, stage, cylinder), ...gaugeEvidence(verdicts, cylinder)].toSorted(
        (a, b) => severity[b.state] - severity[a.state],
      )
      const worst = evidence[0]
      return {
        cylinder,
        state: worst?.state ?? 'unknown',
        headline: worst ? headlineOf(worst) : 'nothing known yet',
        evidence,
      }
    })
}

function plugEvidence(job: Job, stage: Stage, cylinder: number): Evidence[] {
  const slots = job.trays
    .filter(tray => tray.stage === stage)
    .flatMap(tray => tray.slots.filter(slot => slot.cylinder === cylinder))
  return slots.flatMap(slot => {
    const reading = currentReading(slot)
    if (!reading) return []
    const address = slot.plug ? { cylinder, plug: slot.plug } : { cylinder }
    return meaningsOf(reading).map(meaning => ({
      from: 'plug' as const,
      state: meaning.state,
      text: slot.plug ? `Plug ${slotKey(address)}: ${meaning.text}` : meaning.text,
      slot: address,
    }))
  })
}

const stateOfVerdict = {
  within: 'sound',
  watch: 'watch',
  outside: 'fault',
  'cannot be called': 'watch',
} as const

function gaugeEvidence(verdicts: readonly GaugeVerdict[], cylinder: number): Evidence[] {
  return verdicts.flatMap(verdict =>
    verdict.cylinder !== cylinder || verdict.verdict === 'noted'
      ? []
      : [
          {
            from: verdict.test,
            state: stateOfVerdict[verdict.verdict],
            text: `${verdict.rule} ${verdict.value} ${verdict.unit}: ${verdict.verdict} (${verdict.limit}). ${verdict.why}`,
          },
        ],
  )
}

const headlineOf = (evidence: Evidence): string => {
  const first = evidence.text.split(/[.:(]/)[0]?.trim() ?? ''
  return evidence.from === 'plug' ? first : `${evidence.from}: ${first}`
}
