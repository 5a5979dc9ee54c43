import { describe, expect, it } from 'vitest'
import type { Circumstances, Job } from '../job/job-schema.ts'
import type { Pull } from '../job/pull-schema.ts'
import type { FuelPressureEntry } from './fuel-entries.ts'
import { judgeFuelPressure } from './fuel-pressure.ts'
import { jobWith, psi, voided } from './testing/evidence-job.ts'
import { fuelPressure } from './testing/make-pull.ts'

const kPa = (value: number) => ({ value, unit: 'kPa' as const })
const at = (state: FuelPressureEntry['state'], value: number, minutes?: number) =>
  fuelPressure({ state, pressure: psi(value), ...(minutes === undefined ? {} : { minutes }) })
const judge = (pulls: Pull[], specification?: Circumstances['specification'], more: Partial<Job> = {}) =>
  judgeFuelPressure(
    { ...jobWith({ pulls, circumstances: specification ? { specification } : {} }), ...more },
    'as found',
  )
const range = { fuelPressureMinimum: psi(40), fuelPressureMaximum: psi(50) }

describe('against a typed range', () => {
  it.each([
    [45, 'within'],
    [38, 'outside'],
    [52, 'outside'],
    [40, 'cannot be called'],
    [40.5, 'within'],
  ] as const)('%d psi of 40 to 50: %s', (value, verdict) => {
    expect(judge([at('key on', value)], range)).toMatchObject([{ rule: 'key on', verdict, unit: 'psi' }])
  })
  it('idle under it may be the regulator, when key on reaches it', () => {
    const verdicts = judge([at('key on', 45), at('idle', 37)], range)
    expect(verdicts.map(one => one.verdict)).toEqual(['within', 'cannot be called'])
    expect(verdicts[1]?.why).toContain('follows manifold vacuum')
    expect(judge([at('key on', 38), at('idle', 37)], range)[1]?.verdict).toBe('outside')
  })
  it('is as wide as the tester named with it', () => {
    const instruments = [
      { id: 'coarse', kind: 'fuel pressure gauge' as const, name: 'Old gauge', division: 10, unit: 'psi' },
    ]
    const pull = { ...at('key on', 38), instrument: 'coarse' }
    expect(judge([pull], range, { instruments })).toMatchObject([
      { verdict: 'cannot be called', plusMinus: 5 },
    ])
  })
  it('missing, a reading is only noted and asks for load', () => {
    expect(judge([at('idle', 45)])).toMatchObject([{ verdict: 'noted' }])
    expect(judge([at('idle', 45)])[0]?.why).toContain('under load')
  })
})

describe('from idle to load', () => {
  it.each([
    [45, 45, 'within'],
    [45, 44.5, 'within'],
    [45, 38, 'outside'],
    [38, 45, 'within'],
  ] as const)('%d to %d psi: %s', (idle, load, verdict) => {
    const found = judge([at('idle', idle), at('load', load)]).find(one => one.rule === 'load against idle')
    expect(found).toMatchObject({ verdict })
  })
})

describe('holding', () => {
  const hold = (minutes: number, value: number, specification?: Circumstances['specification']) =>
    judge([at('after stopping', 45, 0), at('after stopping', value, minutes)], specification)[0]
  it.each([
    [1, 44, 'noted'],
    [1, 38, 'watch'],
    [1, 40, 'cannot be called'],
    [0.5, 38, 'watch'],
    [0.5, 44, 'cannot be called'],
    [5, 44, 'noted'],
    [5, 38, 'cannot be called'],
  ] as const)('after %d min at %d of 45 psi, by one maker: %s', (minutes, value, verdict) => {
    expect(hold(minutes, value)).toMatchObject({ verdict })
  })
  it('is judged by a typed fall', () => {
    const typed = { fuelPressureFall: psi(5), holdMinutes: 20 }
    expect(hold(20, 43, typed)).toMatchObject({ verdict: 'within', rule: 'hold after 20\u00a0min' })
    expect(hold(20, 30, typed)).toMatchObject({ verdict: 'outside' })
    expect(hold(10, 43, typed)).toMatchObject({ verdict: 'cannot be called' })
    expect(hold(10, 43, typed)?.why).toContain('20\u00a0min after stopping')
  })
  it('starts from key on when nobody read it as the pump stopped, and says so without any', () => {
    expect(judge([at('key on', 50), at('after stopping', 40, 1)]).at(-1)).toMatchObject({ value: 10 })
    expect(judge([at('after stopping', 40, 1)])).toMatchObject([{ verdict: 'noted', value: 40 }])
  })
})

it('takes no notice of voided pulls, and shows the unit asked for', () => {
  expect(judge([voided(at('idle', 20))], range)).toEqual([])
  const job = jobWith({ pulls: [fuelPressure({ state: 'idle', pressure: kPa(300) })] })
  expect(judgeFuelPressure(job, 'as found', { pressure: 'bar', vacuum: 'kPa' })).toMatchObject([
    { value: 3, unit: 'bar' },
  ])
})
