// Each cut-out against the baseline it fell from: the fitted line where drift could be removed, else its own.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { toVacuum } from '../units/convert.ts'
import type { Vacuum } from '../units/quantity.ts'
import { type Baseline, type Drift, driftOf } from './balance-drift.ts'
import { median, tidy } from './middle.ts'
import { speedBound, vacuumBounds } from './vacuum-error.ts'

export type Cut = {
  cylinder: number
  /** Judged: from the fitted baseline where there is one. */
  drop: number
  /** From its own baseline, as the readings stand. */
  ownDrop: number
  plusMinus: number
}

export type Cuts = { cuts: Cut[]; baselines: Baseline[]; drift: Drift }

type Placed = { pull: PullOf<'balance'>; at: number }

const inHg = (quantity: Vacuum): number => tidy(toVacuum(quantity, 'inHg'))

/**
 * The cut-outs numbered in the order of their times, from 0. Those of one and the same time share the middle of their
 * numbers, so the order they are stored in says nothing.
 */
function placed(job: Job, stage: Stage): Placed[] {
  const timed = validPulls(job, 'balance', stage).map(pull => ({ pull, time: Date.parse(pull.at) }))
  const times = timed.map(one => one.time).toSorted((a, b) => a - b)
  const places = new Map<number, number>()
  let first = 0
  for (let i = 0; i < times.length; i++) {
    const time = times[i]
    if (time === undefined || times[i + 1] === time) continue
    places.set(time, (first + i) / 2)
    first = i + 1
  }
  return timed.map(({ pull, time }) => ({ pull, at: places.get(time) ?? 0 }))
}

/** The reading with the cylinder cut falls a third of the way to the next cut, the restored one two thirds. */
const cutLater = 1 / 3
const restoredLater = 2 / 3

type Read = { cylinder: number; at: number; before: number; after: number; restored?: number; error: number }

/** Losses of speed, rpm. */
export const speedCuts = (job: Job, stage: Stage): Cuts =>
  cutsOf(
    placed(job, stage).map(({ pull, at }) => ({
      cylinder: pull.cylinder,
      at,
      before: tidy(pull.entry.rpmBefore),
      after: tidy(pull.entry.rpmAfter),
      ...(pull.entry.rpmRestored === undefined ? {} : { restored: tidy(pull.entry.rpmRestored) }),
      error: speedBound(job, pull.instrument),
    })),
  )

/** Losses of vacuum, inHg, where it was read before and after. */
export const vacuumCuts = (job: Job, stage: Stage): Cuts =>
  cutsOf(
    placed(job, stage).flatMap(({ pull, at }) => {
      const { vacuumBefore, vacuumAfter } = pull.entry
      return vacuumBefore && vacuumAfter
        ? [
            {
              cylinder: pull.cylinder,
              at,
              before: inHg(vacuumBefore),
              after: inHg(vacuumAfter),
              error: vacuumBounds(job, pull.instrument).read,
            },
          ]
        : []
    }),
  )

function cutsOf(reads: readonly Read[]): Cuts {
  const baselines: Baseline[] = reads.flatMap(({ at, before, restored }) => [
    { at, value: before },
    ...(restored === undefined ? [] : [{ at: at + restoredLater, value: restored }]),
  ])
  const drift = driftOf(baselines, median(reads.map(read => read.error)))
  return { cuts: reads.map(read => cutFrom(read, drift)), baselines, drift }
}

function cutFrom(read: Read, drift: Drift): Cut {
  const { cylinder, before, after, restored } = read
  const at = read.at + cutLater
  const ownDrop = tidy((restored === undefined ? before : (before + restored) / 2) - after)
  const error = Math.max(read.error, drift.wander)
  if (drift.kind === 'line')
    return {
      cylinder,
      drop: tidy(drift.baselineAt(at) - after),
      ownDrop,
      plusMinus: Math.hypot(error, drift.errorAt(at)),
    }
  const baselineError = restored === undefined ? error : error / Math.SQRT2
  return { cylinder, drop: ownDrop, ownDrop, plusMinus: Math.hypot(error, baselineError) }
}
