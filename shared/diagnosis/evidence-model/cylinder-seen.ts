// What the other tests of single cylinders say: balance, misfires, leak-down, spark, injector, running compression, swaps.
import { balanceValues } from '../../gauges/balance-values.ts'
import { median } from '../../gauges/middle.ts'
import { misfireCodes } from '../../gauges/trouble-code-words.ts'
import type { SwapEntry } from '../../gauges/swap-entry.ts'
import { inPsi } from '../../gauges/compression-values.ts'
import { validPulls } from '../../job/current.ts'
import type { Job } from '../../job/job-schema.ts'
import type { Stage } from '../../job/tray-schema.ts'
import { type Seen, spans, sure } from './seen.ts'

/** The last pull of each cylinder: the earlier ones were repeated for a reason. */
const lastOf = <P extends { cylinder: number }>(pulls: readonly P[]): P[] => [
  ...new Map(pulls.map(pull => [pull.cylinder, pull])).values(),
]

export function cylinderSeen(job: Job, stage: Stage): Seen[] {
  return [
    ...balanceSeen(job, stage),
    ...misfiresSeen(job, stage),
    ...leakDownSeen(job, stage),
    ...firedAndFedSeen(job, stage),
    ...runningSeen(job, stage),
    ...codesSeen(job, stage),
    ...currentSeen(job, stage),
    ...validPulls(job, 'swap', stage).flatMap(pull => swapSeen(pull.entry)),
  ]
}

function balanceSeen(job: Job, stage: Stage): Seen[] {
  const values = balanceValues(job, stage)
  const rising = values.map(one => one.drop).toSorted((a, b) => a - b)
  const usual = median(rising.slice(Math.floor(rising.length / 2)))
  if (values.length < 2) return []
  const error = median(values.map(one => one.plusMinus))
  if (!(usual > 2 * error)) return [{ finding: 'no cut-out shows', from: 'balance', weights: sure(1, 2) }]
  return values.map(({ cylinder, drop, plusMinus }) => ({
    finding: 'work at idle',
    cylinder,
    from: 'balance' as const,
    weights: spans(
      drop / usual,
      Math.hypot(plusMinus / usual / Math.sqrt(3), 0.08),
      [0.25, 0.65],
    ).toReversed(),
  }))
}

function misfiresSeen(job: Job, stage: Stage): Seen[] {
  const pulls = validPulls(job, 'misfire counts', stage)
  const cylinders = [...new Set(pulls.map(pull => pull.cylinder))]
  const counts = cylinders.map(cylinder => ({
    cylinder,
    count: pulls.reduce((sum, pull) => sum + (pull.cylinder === cylinder ? pull.entry.count : 0), 0),
  }))
  const most = Math.max(0, ...counts.map(one => one.count))
  // Few counts in all are weak: monitors pause, and a handful is what sound engines show.
  if (most < 10) return []
  return counts.map(({ cylinder, count }) => ({
    finding: 'misfires',
    cylinder,
    from: 'misfire counts' as const,
    weights: spans(count / most, 0.08 + 1 / Math.sqrt(most) / 2, [0.12, 0.45]),
  }))
}

/** A code names a cylinder only where a monitor was sure enough; its absence says little and counts nothing. */
function codesSeen(job: Job, stage: Stage): Seen[] {
  const named = validPulls(job, 'trouble codes', stage)
    .flatMap(({ entry }) => entry.codes)
    .flatMap(({ code }) => misfireCodes[code]?.cylinder ?? [])
  // Counts and codes come from one monitor: they are not two pieces of evidence.
  const counted = new Set(validPulls(job, 'misfire counts', stage).map(pull => pull.cylinder))
  const left = [...new Set(named)].filter(cylinder => !counted.has(cylinder))
  return left.map(cylinder => ({
    finding: 'misfires',
    cylinder,
    from: 'trouble codes' as const,
    weights: [0.1, 0.6, 1],
  }))
}

/** Compression by starter current, where a sync signal says which cylinder is which. Wider than a gauge: judgement. */
function currentSeen(job: Job, stage: Stage): Seen[] {
  const last = validPulls(job, 'relative compression', stage).at(-1)
  if (!last?.entry.synced) return []
  return last.entry.values.flatMap(({ cylinder, percent, plusMinus }): Seen[] =>
    cylinder === undefined
      ? []
      : [
          {
            finding: 'compression level',
            cylinder,
            from: 'relative compression',
            weights: spans(
              percent / 100,
              Math.hypot((plusMinus ?? 4) / 200, 0.06),
              [0.35, 0.72, 0.87],
            ).toReversed(),
          },
        ],
  )
}

const paths = [
  ['intake', 'air at the intake'],
  ['exhaust', 'air at the exhaust'],
  ['oil filler', 'air at the oil filler'],
  ['radiator', 'bubbles in the radiator'],
  ['next plug hole', 'air at the next plug hole'],
] as const

function leakDownSeen(job: Job, stage: Stage): Seen[] {
  return lastOf(validPulls(job, 'leak-down', stage)).flatMap(({ cylinder, entry }): Seen[] => {
    const from = 'leak-down' as const
    const lost =
      entry.form === 'percent'
        ? entry.percent
        : 100 * (1 - inPsi(entry.held) / Math.max(inPsi(entry.supply), 1e-6))
    const level: Seen = { finding: 'air lost', cylinder, from, weights: spans(lost, 3, [20, 35]) }
    // A little air is heard somewhere on any engine; where it goes counts once there is enough of it.
    if (lost < 15 || !entry.escapes) return [level]
    const { escapes } = entry
    const heard = paths.map(([escape, finding]) => ({
      finding,
      cylinder,
      from,
      weights: sure(escapes.includes(escape) ? 1 : 0, 2),
    }))
    return [level, ...heard]
  })
}

function firedAndFedSeen(job: Job, stage: Stage): Seen[] {
  const sparks = lastOf(validPulls(job, 'spark', stage)).flatMap(({ cylinder, entry }): Seen[] => {
    const from = 'spark' as const
    const level = { strong: 0, weak: 1, intermittent: 1, none: 2 }[entry.spark]
    const tracks = {
      'none seen': 0,
      boot: 1,
      lead: 1,
      'plug insulator': 2,
      coil: 3,
      'distributor cap or rotor': 4,
    }
    return [
      { finding: 'spark', cylinder, from, weights: sure(level, 3) },
      ...(entry.tracks === undefined
        ? []
        : [
            {
              finding: 'where the spark runs off',
              cylinder,
              from,
              weights: sure(tracks[entry.tracks], 5),
            },
          ]),
    ]
  })
  const sounds = lastOf(validPulls(job, 'injector', stage)).flatMap(({ cylinder, entry }): Seen[] =>
    entry.click === undefined
      ? []
      : [
          {
            finding: 'injector sound',
            cylinder,
            from: 'injector',
            weights: sure({ clear: 0, faint: 1, none: 2 }[entry.click], 3),
          },
        ],
  )
  const drops = lastOf(validPulls(job, 'injector balance', stage)).map(({ cylinder, entry }) => ({
    cylinder,
    drop: inPsi(entry.before) - inPsi(entry.after),
  }))
  // Published limits are 10 and 20 kPa from the average: 1.5 and 2.9 psi. The middle between them.
  const usual = median(drops.map(one => one.drop))
  const balance = drops.map(
    ({ cylinder, drop }): Seen => ({
      finding: 'injector drop',
      cylinder,
      from: 'injector balance',
      weights: spans(drop - usual, 0.5, [-2.2, 2.2]),
    }),
  )
  return [...sparks, ...sounds, ...(drops.length > 2 ? balance : [])]
}

function runningSeen(job: Job, stage: Stage): Seen[] {
  const idles = lastOf(validPulls(job, 'running compression', stage)).flatMap(({ cylinder, entry }) =>
    entry.idle ? [{ cylinder, idle: inPsi(entry.idle) }] : [],
  )
  const usual = median(idles.map(one => one.idle))
  if (idles.length < 2 || !(usual > 0)) return []
  return idles.map(({ cylinder, idle }) => ({
    finding: 'breathing when running',
    cylinder,
    from: 'running compression' as const,
    weights: spans(idle / usual, 0.06, [0.8, 1.25]),
  }))
}

/** A part that took others along, or a result that says neither, tells nothing of that part. */
function swapSeen({ part, also, from, result, intermittent }: SwapEntry): Seen[] {
  if (part === 'other' || (also?.length ?? 0) > 0) return []
  const went = result === 'followed the part' || result === 'gone'
  if (!went && result !== 'stayed') return []
  // A fault that comes and goes can seem to follow a part.
  const doubt = intermittent === true ? 0.25 : 0.03
  return [
    {
      finding: `moved ${part}`,
      cylinder: from,
      from: 'swap',
      weights: went ? [1 - doubt, doubt] : [doubt, 1 - doubt],
    },
  ]
}
