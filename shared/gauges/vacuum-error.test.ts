import { describe, expect, it } from 'vitest'
import type { Job } from '../job/job-schema.ts'
import type { Pull } from '../job/pull-schema.ts'
import { balanceValues } from './balance-values.ts'
import { cut, jobWith, vacuum } from './testing/evidence-job.ts'
import { judgeVacuum } from './vacuum.ts'
import { speedBound, vacuumBounds } from './vacuum-error.ts'

const instruments: Job['instruments'] = [
  { id: 'fine', kind: 'vacuum gauge', name: 'Bench gauge', division: 0.2, unit: 'inHg' },
  { id: 'coarse', kind: 'vacuum gauge', name: 'Old gauge', division: 2, unit: 'inHg' },
  {
    id: 'class',
    kind: 'vacuum gauge',
    name: 'Dial of a class',
    division: 0.5,
    unit: 'inHg',
    accuracyPercent: 2.5,
    fullScale: 30,
  },
  { id: 'metric', kind: 'vacuum gauge', name: 'Metric dial', division: 2, unit: 'kPa' },
  { id: 'tachometer', kind: 'scan tool', name: 'Bench tachometer', division: 50, unit: 'rpm' },
  { id: 'count', kind: 'scan tool', name: 'Counter', division: 1, unit: 'rpm' },
]
const on = (instrument: string, pulls: Pull[]): Job => ({
  ...jobWith({ pulls: pulls.map(pull => ({ ...pull, instrument })) }),
  instruments,
})
const ruled = (rule: string, job: Job) => judgeVacuum(job, 'as found').find(one => one.rule === rule)

describe('a vacuum gauge', () => {
  it('is read to half its own division', () => {
    expect(vacuumBounds({ instruments }, 'coarse')).toEqual({ read: 1, byClass: 0 })
    expect(vacuumBounds({ instruments }, 'metric').read).toBeCloseTo(0.2953, 4)
  })
  it('without one, or with one of another kind, is read as common ones are', () => {
    expect(vacuumBounds({ instruments }, undefined)).toEqual({ read: 0.25, byClass: 0 })
    expect(vacuumBounds({ instruments }, 'tachometer')).toEqual({ read: 0.25, byClass: 0 })
    expect(vacuumBounds({}, 'fine')).toEqual({ read: 0.25, byClass: 0 })
  })
  it('settles or leaves open the same reading', () => {
    const idle = [vacuum('idle', 17.2)]
    expect(ruled('idle', on('fine', idle))).toMatchObject({ verdict: 'within', plusMinus: 0.1 })
    expect(ruled('idle', on('coarse', idle))).toMatchObject({ verdict: 'cannot be called', plusMinus: 1 })
  })
  it('counts its class against a band, and not between two of its own readings', () => {
    // Half a division of 0.25 and 2.5 % of 30, each uniform within its bounds, with k = 2.
    const error = 2 * Math.hypot(0.25 / Math.sqrt(3), 0.75 / Math.sqrt(3))
    expect(ruled('idle', on('class', [vacuum('idle', 19)]))?.plusMinus).toBeCloseTo(error, 2)
    const apart = (rebound: number) =>
      ruled('snap, rebound', on('class', [vacuum('idle', 19), vacuum('snap', 0, { rebound })]))
    expect(apart(19.5)).toMatchObject({ verdict: 'within' })
    const [idle, snap] = [vacuum('idle', 19), vacuum('snap', 0, { rebound: 19.5 })]
    const mixed: Job = {
      ...jobWith({ pulls: [{ ...idle, instrument: 'class' }, snap] }),
      instruments,
    }
    expect(ruled('snap, rebound', mixed)).toMatchObject({ verdict: 'cannot be called' })
  })
})

describe('a tachometer', () => {
  it('is never nearer than the engine wanders', () => {
    expect(speedBound({ instruments }, 'count')).toBe(10)
    expect(speedBound({ instruments }, 'tachometer')).toBe(25)
    expect(speedBound({ instruments }, undefined)).toBe(10)
  })
  it('of coarse divisions leaves a drop less sure', () => {
    const width = (instrument: string) =>
      balanceValues(on(instrument, [cut(1, [800, 700]), cut(2, [800, 710])]), 'as found')[0]?.plusMinus
    expect(width('count')).toBeCloseTo(Math.hypot(10, 10), 5)
    expect(width('tachometer')).toBeCloseTo(Math.hypot(25, 25), 5)
  })
})
