// What the pulls and their set-up say against themselves: a gauge that does not hold, a shut throttle, plugs left in, a
// cold engine, uneven numbers of puffs.
import { conditionsOf, validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { fallsInSequence } from './compression-sequence.ts'
import { rangeOf } from './middle.ts'
import { inWords, type ShownUnits } from './shown.ts'
import { sources } from './sources.ts'
import type { GaugeVerdict } from './verdict.ts'

type Spoiler = { rule: string; limit: string; why: string }

/** Verdicts on the compression readings of one stage as a whole, all about the reading. */
export function compressionSpoilers(job: Job, stage: Stage, units: ShownUnits): GaugeVerdict[] {
  const pulls = validPulls(job, 'compression', stage)
  if (pulls.length === 0) return []
  const found: Spoiler[] = setUpSpoilers(job, stage)
  const count = pulls.length
  return [
    ...found.map(one => ({
      test: 'compression' as const,
      stage,
      value: count,
      unit: count === 1 ? 'pull' : 'pulls',
      verdict: 'watch' as const,
      source: sources.practice,
      about: 'reading' as const,
      ...one,
    })),
    ...notHeld(job, stage),
    ...unevenPuffs(job, stage),
    ...fallsInSequence(job, stage, units),
  ]
}

function setUpSpoilers(job: Job, stage: Stage): Spoiler[] {
  const { throttle, plugs, engine, disabled } = conditionsOf(job, 'compression', stage)
  const cold = engine === 'cold' || (engine === undefined && job.circumstances.engineWarm === false)
  return [
    ...(throttle === 'closed'
      ? [
          {
            rule: 'throttle shut',
            limit: 'throttle wide open while cranking',
            why: 'The throttle was shut: all cylinders read low. Cylinders may still be compared; pull again for any limit.',
          },
        ]
      : []),
    ...(plugs === 'only the tested one out'
      ? [
          {
            rule: 'plugs left in',
            limit: 'all plugs out',
            why: 'The other plugs were left in: the engine cranks slowly and reads low. Take all out and pull again for any limit.',
          },
        ]
      : []),
    ...(cold
      ? [
          {
            rule: 'engine cold',
            limit: 'engine warm, unless the service information says otherwise; all cylinders alike',
            why: 'Pulled cold: rings and valves seal less. Compare with cold readings only, or warm it and pull again.',
          },
        ]
      : []),
    ...(disabled === false
      ? [
          {
            rule: 'ignition or injection live',
            limit: 'ignition and injection disabled before cranking',
            why: 'Not disabled: fuel washes the bores and reads low, and it is a fire and shock hazard. Disable both before another pull.',
          },
        ]
      : []),
  ]
}

function notHeld(job: Job, stage: Stage): GaugeVerdict[] {
  const cylinders = new Map<number, number>()
  for (const { cylinder, entry } of validPulls(job, 'compression', stage))
    if (entry.held === false) cylinders.set(cylinder, (cylinders.get(cylinder) ?? 0) + 1)
  return [...cylinders]
    .toSorted(([a], [b]) => a - b)
    .map(([cylinder, count]) => ({
      test: 'compression',
      rule: 'does not hold',
      cylinder,
      stage,
      value: count,
      unit: count === 1 ? 'pull' : 'pulls',
      verdict: 'watch',
      limit: 'the gauge keeps its reading after cranking stops',
      why: 'The reading fell back by itself: the valve of the gauge or its adapter leaks, and what was read may be low. Clean the valve, check the seal, pull again.',
      source: sources.practice,
      about: 'reading',
    }))
}

/** More strokes pump a leaking cylinder higher, so unequal counts hide or make a difference. */
function unevenPuffs(job: Job, stage: Stage): GaugeVerdict[] {
  const counted = validPulls(job, 'compression', stage).flatMap(({ entry }) =>
    entry.puffs === undefined || entry.wet === true ? [] : [entry.puffs],
  )
  const range = rangeOf(counted)
  if (range < 1) return []
  return [
    {
      test: 'compression',
      rule: 'puffs alike',
      stage,
      value: range,
      unit: range === 1 ? 'puff' : 'puffs',
      verdict: 'watch',
      limit: 'the same number of puffs on every cylinder',
      why: `Counted ${inWords([...new Set(counted)].toSorted((a, b) => a - b))} puffs: fewer read low. Pull again with the same count on all.`,
      source: sources.puffs,
      about: 'reading',
    },
  ]
}
