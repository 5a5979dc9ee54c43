// Patterns of low compression across the engine: neighbours, a bank, all alike.
import { cylindersOf, neighbours } from '../engine/relations.ts'
import { compressionValues, isMeasured } from '../gauges/compression-values.ts'
import { judgeCompression, lowCylinders } from '../gauges/compression.ts'
import { notHelpedByOil } from '../gauges/compression-wet.ts'
import { inWords } from '../gauges/shown.ts'
import type { GaugeVerdict } from '../gauges/verdict.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import type { EngineRemark } from './engine-remarks.ts'
import type { PlugReading } from './plug-evidence.ts'

const gasketSource =
  'US Army TM 5-4210-230-14&P-1, Addendum 2; General Motors, Ford and Mazda compression and leakage pages'

/** Only what the rules call outside for certain. */
const clearlyLow = (verdicts: readonly GaugeVerdict[]): Set<number> =>
  lowCylinders(verdicts.filter(one => one.verdict === 'outside'))

export function compressionPatterns(
  job: Job,
  stage: Stage,
  readings: readonly PlugReading[],
): EngineRemark[] {
  const verdicts = judgeCompression(job, stage)
  const low = clearlyLow(verdicts)
  const wholeBanks = lowBanks(job, verdicts, low)
  const inBank = new Set(wholeBanks.flatMap(remark => remark.cylinders ?? []))
  return [
    ...lowNeighbours(job, stage, low, inBank),
    ...wholeBanks,
    ...allLow(job, verdicts),
    ...coolantBeside(job, low, readings),
  ]
}

function lowNeighbours(
  job: Job,
  stage: Stage,
  low: ReadonlySet<number>,
  inBank: ReadonlySet<number>,
): EngineRemark[] {
  const unhelped = notHelpedByOil(compressionValues(job, stage).filter(isMeasured), low)
  return [...low]
    .toSorted((a, b) => a - b)
    .flatMap(a =>
      neighbours(job.layout, a)
        .filter(b => a < b && low.has(b) && !inBank.has(a))
        .map(b => ({
          kind: 'neighbours low',
          cylinders: [a, b],
          text: `Cylinders ${a} and ${b} stand side by side and are both low: think of the head gasket between them first.${
            unhelped.has(a) && unhelped.has(b)
              ? ' Oil helped neither, which fits.'
              : ' A wet pull on both would tell: oil does not help a gasket.'
          }`,
          plain: `Cylinders ${a} and ${b}, side by side, both hold too little pressure; the seal between them is looked at first.`,
          source: gasketSource,
        })),
    )
}

function lowBanks(job: Job, verdicts: readonly GaugeVerdict[], low: ReadonlySet<number>): EngineRemark[] {
  const measured = new Set(verdicts.map(one => one.cylinder))
  if (job.layout.banks.length < 2) return []
  return job.layout.banks
    .filter(({ cylinders }) => cylinders.length > 1 && cylinders.every(one => low.has(one)))
    .filter(({ cylinders }) =>
      cylindersOf(job.layout)
        .filter(one => !cylinders.includes(one))
        .every(one => measured.has(one) && !low.has(one)),
    )
    .map(({ name, cylinders }) => ({
      kind: 'one bank low',
      cylinders: [...cylinders],
      text: `Every cylinder of one bank (${name}: ${inWords(cylinders)}) is low and none of the other: think of that bank's valve timing first.`,
      plain: `Cylinders ${inWords(cylinders)}, one side of the engine, hold less pressure than the other side.`,
      source: 'technician certification study pages; common practice',
    }))
}

/** All measured, all under the floor or the specification, none lower than its mates. */
function allLow(job: Job, verdicts: readonly GaugeVerdict[]): EngineRemark[] {
  const all = cylindersOf(job.layout)
  const under = new Set(
    verdicts
      .filter(
        one =>
          (one.rule === 'usual floor' && one.verdict === 'watch') ||
          ((one.rule === 'specified minimum' || one.rule === 'floor') && one.verdict === 'outside'),
      )
      .map(one => one.cylinder),
  )
  const uneven = verdicts.some(
    one =>
      (one.rule === 'below highest' || one.rule.startsWith('share of ')) &&
      (one.verdict === 'outside' || one.verdict === 'cannot be called'),
  )
  if (all.length < 2 || uneven || !all.every(one => under.has(one))) return []
  return [
    {
      kind: 'all low and even',
      cylinders: all,
      text: 'All cylinders are low and even: cranking speed, a shut throttle, valve timing or general wear before any one cylinder. Some engines with late intake closing read so by design.',
      plain: 'All cylinders hold little pressure, and alike.',
      source:
        'US Army Ordnance subcourse OD1001, lesson 3; technician certification study pages; common practice',
    },
  ]
}

function coolantBeside(job: Job, low: ReadonlySet<number>, readings: readonly PlugReading[]): EngineRemark[] {
  const wet = readings.filter(one => one.reading.condition === 'coolant').map(one => one.slot.cylinder)
  return [...new Set(wet)].flatMap(cylinder =>
    neighbours(job.layout, cylinder)
      .filter(other => low.has(other) && !wet.includes(other))
      .map(other => ({
        kind: 'coolant beside a low cylinder',
        cylinders: [cylinder, other],
        text: `Coolant on the plug of cylinder ${cylinder} and low compression in cylinder ${other} beside it: think of a gasket breached between them.`,
        plain: `Coolant shows in cylinder ${cylinder}, and cylinder ${other} beside it holds too little pressure.`,
        source: 'common practice',
      })),
  )
}
