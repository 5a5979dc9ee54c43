// Invented jobs for tests of judgement: an engine, and just the pulls and readings that a test speaks of.
import { layoutById } from '../../engine/layouts.ts'
import type { Layout } from '../../engine/layout-schema.ts'
import type { Circumstances, Job } from '../../job/job-schema.ts'
import { newJob } from '../../job/new-job.ts'
import type { Pull, PullOf } from '../../job/pull-schema.ts'
import type { Reading, ReadingDetails, Slot, Stage } from '../../job/tray-schema.ts'
import type { Condition } from '../../plug/condition.ts'
import type { Pressure, Vacuum } from '../../units/quantity.ts'
import type { NeedleBehaviour, VacuumPhase } from '../vacuum-entry.ts'

const at = '2026-03-02T09:00:00Z'
let pulls = 0
const common = (stage: Stage) => ({ id: `pull-${++pulls}`, stage, at })

export const psi = (value: number): Pressure => ({ value, unit: 'psi' })
export const inHg = (value: number): Vacuum => ({ value, unit: 'inHg' })

type CompressionMore = { firstPuff?: number; wet?: boolean; stage?: Stage }

/** One dry pull, in psi, unless `wet`. */
export const compression = (
  cylinder: number,
  final: number,
  { firstPuff, wet, stage = 'as found' }: CompressionMore = {},
): PullOf<'compression'> => ({
  ...common(stage),
  test: 'compression',
  cylinder,
  entry: {
    final: psi(final),
    ...(firstPuff === undefined ? {} : { firstPuff: psi(firstPuff) }),
    ...(wet === undefined ? {} : { wet }),
  },
})

/** One cut-out: speed before and after, vacuum before and after where given. */
export const cut = (
  cylinder: number,
  rpm: readonly [before: number, after: number],
  vacuum?: readonly [before: number, after: number],
  stage: Stage = 'as found',
): PullOf<'balance'> => ({
  ...common(stage),
  test: 'balance',
  cylinder,
  entry: {
    rpmBefore: rpm[0],
    rpmAfter: rpm[1],
    ...(vacuum ? { vacuumBefore: inHg(vacuum[0]), vacuumAfter: inHg(vacuum[1]) } : {}),
  },
})

type VacuumMore = { rebound?: number; needle?: NeedleBehaviour; stage?: Stage }

export const vacuum = (
  phase: VacuumPhase,
  reading: number,
  { rebound, needle, stage = 'as found' }: VacuumMore = {},
): PullOf<'vacuum'> => ({
  ...common(stage),
  test: 'vacuum',
  entry: {
    phase,
    reading: inHg(reading),
    ...(rebound === undefined ? {} : { rebound: inHg(rebound) }),
    ...(needle === undefined ? {} : { needle }),
  },
})

/** The pull, struck out. */
export const voided = <T extends Pull>(pull: T): T => ({ ...pull, voided: { reason: 'misread', at } })

export const reading = (condition: Condition | undefined, details: ReadingDetails = {}): Reading => ({
  by: { kind: 'person' },
  at,
  ...(condition === undefined ? {} : { condition }),
  details,
})

type EvidenceJob = {
  /** Id of a built-in layout; an inline six without. */
  layout?: string
  pulls?: Pull[]
  circumstances?: Circumstances
  /** By cylinder, on the first tray. */
  readings?: Readonly<Record<number, Reading>>
}

export function jobWith({
  layout = 'i6-153624',
  pulls = [],
  circumstances = {},
  readings = {},
}: EvidenceJob): Job {
  const job = newJob({
    id: 'job-1',
    trayId: 'tray-1',
    now: at,
    complaint: 'Shakes at idle',
    engine: { vehicle: 'Invented test bed' },
    layout: layoutNamed(layout),
  })
  const read = (slot: Slot): Slot => {
    const found = readings[slot.cylinder]
    return found ? { ...slot, reading: found } : slot
  }
  return {
    ...job,
    pulls,
    circumstances,
    trays: job.trays.map(tray => ({ ...tray, slots: tray.slots.map(read) })),
  }
}

export function layoutNamed(id: string): Layout {
  const layout = layoutById(id)
  if (!layout) throw new Error(`no layout ${id}`)
  return layout
}

/** One dry pull a cylinder, by number from 1. */
export const onePullEach = (finals: readonly number[]): PullOf<'compression'>[] =>
  finals.map((final, i) => compression(i + 1, final))
