// Plain facts about the engine as a whole that can be read off directly: patterns of the trade, no probabilities.
import { companion } from '../engine/relations.ts'
import { valueWords } from './gauge-evidence.ts'
import { judgeAll } from '../gauges/gauges.ts'
import { type ShownUnits, tradeUnits } from '../gauges/shown.ts'
import type { GaugeVerdict } from '../gauges/verdict.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { compressionPatterns } from './compression-patterns.ts'
import { plugPatterns } from './plug-patterns.ts'
import { plugReadings } from './plug-evidence.ts'

export type EngineRemark = {
  kind: string
  text: string
  /** For a customer; empty for what only a technician can use. */
  plain: string
  source: string
  /** Those it speaks of, where it speaks of some. */
  cylinders?: number[]
}

/** In the order in which they are worth reading. */
export function engineRemarks(job: Job, stage: Stage, units: ShownUnits = tradeUnits): EngineRemark[] {
  const verdicts = judgeAll(job, stage, units)
  const readings = plugReadings(job, stage)
  return [
    ...compressionPatterns(job, stage, readings),
    ...plugPatterns(job, readings),
    ...weakCompanions(job, verdicts),
    ...engineVerdicts(verdicts),
    ...doubtfulReadings(verdicts),
  ]
}

function weakCompanions(job: Job, verdicts: readonly GaugeVerdict[]): EngineRemark[] {
  const weak = new Set(
    verdicts.flatMap(({ test, verdict, cylinder }) =>
      test === 'balance' && verdict === 'outside' && cylinder !== undefined ? [cylinder] : [],
    ),
  )
  return [...weak].flatMap(a => {
    const b = companion(job.layout, a)
    return b !== null && a < b && weak.has(b)
      ? [
          {
            kind: 'companions weak',
            cylinders: [a, b],
            text: `Cylinders ${a} and ${b} are companions and both weak: where spark is wasted they share a coil and driver.`,
            plain: `Cylinders ${a} and ${b} may share an ignition coil, and both do too little work.`,
            source: 'common practice',
          },
        ]
      : []
  })
}

/** Verdicts that speak of the engine, not of a cylinder. */
function engineVerdicts(verdicts: readonly GaugeVerdict[]): EngineRemark[] {
  return verdicts
    .filter(one => one.cylinder === undefined && one.about !== 'reading')
    .filter(one => one.verdict !== 'within' && one.verdict !== 'noted')
    .map(one => ({
      kind: `${one.test}, ${one.rule}`,
      text: `${capital(one.test)}, ${one.rule}: ${valueWords(one)}, ${one.verdict} (${one.limit}). ${one.why}`,
      plain: plainOf(one),
      source: one.source,
    }))
}

/** Only what can be said without the gauge at hand. */
function plainOf({ rule, verdict }: GaugeVerdict): string {
  if (rule === 'idle' && verdict === 'outside')
    return 'The intake vacuum of the idling engine is lower than it should be.'
  if (rule === '2500 rpm' && verdict === 'outside')
    return 'The intake vacuum falls when the engine is revved, as if the exhaust were held back.'
  return ''
}

/** Readings that do not repeat or cannot be: everything above leans on them. */
function doubtfulReadings(verdicts: readonly GaugeVerdict[]): EngineRemark[] {
  return verdicts
    .filter(one => one.about === 'reading' && (one.verdict === 'watch' || one.verdict === 'cannot be called'))
    .map(one => ({
      kind: 'doubtful reading',
      ...(one.cylinder === undefined ? {} : { cylinders: [one.cylinder] }),
      text: `${capital(one.test)}${one.cylinder === undefined ? '' : `, cylinder ${one.cylinder}`}: ${one.why}`,
      plain: '',
      source: one.source,
    }))
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1)
