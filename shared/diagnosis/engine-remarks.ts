// Plain facts about the engine as a whole that can be read off directly: patterns of the trade, no probabilities.
import { companion, neighbours } from '../engine/relations.ts'
import { compressionRules } from '../gauges/compression-comparison.ts'
import { compressionValues } from '../gauges/compression-values.ts'
import { judgeAll } from '../gauges/gauges.ts'
import { type ShownUnits, tradeUnits } from '../gauges/shown.ts'
import { currentReading } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import type { Condition } from '../plug/condition.ts'

export type EngineRemark = { kind: string; text: string; source: string }

const army = 'US Army TM 5-4210-230-14&P-1'

/** In the order in which they are worth reading. */
export function engineRemarks(job: Job, stage: Stage, units: ShownUnits = tradeUnits): EngineRemark[] {
  return [
    ...lowNeighbours(job, stage),
    ...plugPatterns(job, stage),
    ...weakCompanions(job, stage),
    ...engineVerdicts(job, stage, units),
  ]
}

/** Cylinders whose middle dry pull is below the common share of the highest. */
export function lowCylinders(job: Job, stage: Stage): number[] {
  const values = compressionValues(job, stage).flatMap(({ cylinder, dry }) =>
    dry === undefined ? [] : [{ cylinder, dry }],
  )
  const highest = Math.max(...values.map(value => value.dry))
  return values
    .filter(value => value.dry < (highest * compressionRules.shareOfHighest) / 100)
    .map(value => value.cylinder)
}

function lowNeighbours(job: Job, stage: Stage): EngineRemark[] {
  const low = lowCylinders(job, stage)
  return low.flatMap(a =>
    neighbours(job.layout, a)
      .filter(b => a < b && low.includes(b))
      .map(b => ({
        kind: 'neighbours low',
        text: `Cylinders ${a} and ${b} stand side by side and are both low: think of the head gasket between them first. If oil does not help either, the more so.`,
        source: `${army}; vehicle makers' compression pages`,
      })),
  )
}

type Reading = { cylinder: number; condition: Condition }

const readingsOf = (job: Job, stage: Stage): Reading[] =>
  job.trays
    .filter(tray => tray.stage === stage)
    .flatMap(tray => tray.slots)
    .flatMap(slot => {
      const condition = currentReading(slot)?.condition
      return condition ? [{ cylinder: slot.cylinder, condition }] : []
    })

const patternText: Partial<Record<Condition, string>> = {
  lean: 'fuel pressure, air metering, an intake leak common to all, or plugs too hot',
  rich: 'fuel pressure, leaking regulator, purge, air filter or coolant sensor',
  carbon: 'rich running, cold plugs, short trips or long idling',
  'oil-wetted': 'break-in, blocked crankcase ventilation or general wear',
  ash: 'rings, guides or the breather',
}

function plugPatterns(job: Job, stage: Stage): EngineRemark[] {
  const readings = readingsOf(job, stage)
  const remarks: EngineRemark[] = []
  for (const [condition, text] of Object.entries(patternText)) {
    const alike = new Set(readings.filter(one => one.condition === condition).map(one => one.cylinder))
    const read = new Set(readings.map(one => one.cylinder))
    if (alike.size < 2) continue
    if (alike.size === read.size && read.size > 2) {
      remarks.push({
        kind: `all ${condition}`,
        text: `All plugs read ${condition}: think of ${text} before any one cylinder.`,
        source: 'common practice',
      })
      continue
    }
    for (const bank of job.layout.banks) {
      const rest = [...read].filter(cylinder => !bank.cylinders.includes(cylinder))
      if (
        bank.cylinders.length < 2 ||
        !bank.cylinders.every(one => alike.has(one)) ||
        rest.some(one => alike.has(one))
      )
        continue
      if (rest.length === 0) continue
      remarks.push({
        kind: `one bank ${condition}`,
        text: `Only the ${bank.name} (${bank.cylinders.join(', ')}) reads ${condition}: look for what that bank has of its own: air leak, sensor, exhaust, fuel feed.`,
        source: 'technical articles on trims; common practice',
      })
    }
  }
  return remarks
}

function weakCompanions(job: Job, stage: Stage): EngineRemark[] {
  const weak = judgeAll(job, stage)
    .filter(verdict => verdict.test === 'balance' && verdict.verdict === 'outside')
    .flatMap(verdict => (verdict.cylinder === undefined ? [] : [verdict.cylinder]))
  return weak.flatMap(a => {
    const b = companion(job.layout, a)
    return b !== null && a < b && weak.includes(b)
      ? [
          {
            kind: 'companions weak',
            text: `Cylinders ${a} and ${b} are companions and both weak: where spark is wasted they share a coil and driver.`,
            source: 'common practice',
          },
        ]
      : []
  })
}

/** Verdicts that speak of the engine, not of a cylinder. */
function engineVerdicts(job: Job, stage: Stage, units: ShownUnits): EngineRemark[] {
  return judgeAll(job, stage, units)
    .filter(one => one.cylinder === undefined && one.verdict !== 'within' && one.verdict !== 'noted')
    .map(one => ({
      kind: `${one.test}, ${one.rule}`,
      text: `${one.value} ${one.unit}: ${one.verdict} (${one.limit}). ${one.why}`,
      source: one.source,
    }))
}
