// Leak-down: percent lost, the rule that judges it, where it escapes, and what is not compared.
import { describe, expect, it } from 'vitest'
import type { Circumstances, Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import { escapePaths, type LeakDownEntry } from './leak-down-entry.ts'
import { escapePathsInOrder } from './leak-down-paths.ts'
import { judgeLeakDown } from './leak-down.ts'
import { jobWith, psi } from './testing/evidence-job.ts'

let made = 0
const pull = (cylinder: number, entry: LeakDownEntry): PullOf<'leak-down'> => ({
  id: `leak-${++made}`,
  stage: 'as found',
  at: '2026-03-02T09:00:00Z',
  test: 'leak-down',
  cylinder,
  entry,
})
type More = Pick<LeakDownEntry, 'escapes' | 'towards' | 'orifice' | 'engine'>
const percent = (cylinder: number, value: number, more: More = {}) =>
  pull(cylinder, { form: 'percent', percent: value, ...more })
const gauges = (cylinder: number, supply: number, held: number) =>
  pull(cylinder, { form: 'differential', supply: psi(supply), held: psi(held) })

const job = (pulls: PullOf<'leak-down'>[], circumstances: Circumstances = {}): Job =>
  jobWith({ pulls, circumstances })
const one = (from: Job, cylinder: number, rule: string) =>
  judgeLeakDown(from, 'as found').find(found => found.cylinder === cylinder && found.rule === rule)

describe('what is lost', () => {
  it.each([
    [75, 6.25],
    [72, 10],
    [60, 25],
  ])('80 psi in and %d held is %d %%', (held, lost) => {
    expect(one(job([gauges(1, 80, held)]), 1, 'leakage')?.value).toBe(lost)
  })
  it('cannot be read where more is held than goes in', () => {
    const from = job([gauges(1, 80, 85)])
    expect(one(from, 1, 'leakage')).toBeUndefined()
    expect(one(from, 1, 'misread')).toMatchObject({ about: 'reading', verdict: 'watch' })
  })
})

describe('the limit', () => {
  it.each([
    [9, 'within'],
    [10.5, 'within'],
    [15, 'watch'],
    [20.5, 'cannot be called'],
    [22, 'outside'],
  ] as const)('of 20 %%, normal 10: %d is %s', (lost, verdict) => {
    expect(one(job([percent(1, lost)]), 1, 'leakage')?.verdict).toBe(verdict)
  })
  it('is the one that the shop chose, or the one typed', () => {
    const chosen = job([percent(1, 23)], { rules: { leakDown: 'leak-25' } })
    expect(one(chosen, 1, 'leakage')?.verdict).toBe('within')
    const typed = job([percent(1, 23)], {
      rules: { leakDown: 'leak-25' },
      specification: { leakDownMaximum: 15 },
    })
    expect(one(typed, 1, 'leakage')).toMatchObject({
      verdict: 'outside',
      source: 'specification typed for this vehicle',
    })
  })
  it('asks for a hot recheck in the aviation form', () => {
    expect(one(job([gauges(1, 80, 50)]), 1, 'leakage')?.why).toContain('3 minutes')
  })
  it('on points apart only warns', () => {
    expect(one(job([percent(1, 2), percent(2, 9)]), 2, 'above the tightest')).toMatchObject({
      verdict: 'watch',
      value: 7,
    })
  })
})

describe('where it escapes', () => {
  it('names the part, and the neighbour', () => {
    const from = job([percent(3, 8, { escapes: ['next plug hole', 'intake'], towards: 4 })])
    const found = one(from, 3, 'where it escapes')
    expect(found?.verdict).toBe('watch')
    expect(found?.why).toMatch(/intake valve.*cylinder 4: head gasket/s)
  })
  it('leaves rings that lose a little to the percentage', () => {
    expect(one(job([percent(1, 8, { escapes: ['oil filler'] })]), 1, 'where it escapes')?.verdict).toBe(
      'noted',
    )
  })
  it('condemns no cylinder by a leaking adapter', () => {
    const from = job([percent(1, 40, { escapes: ['plug adapter'] })])
    expect(one(from, 1, 'leakage')?.verdict).toBe('cannot be called')
    expect(one(from, 1, 'adapter')?.about).toBe('reading')
  })
  it('knows every path of the entry', () => {
    expect(escapePathsInOrder).toEqual(escapePaths)
  })
})

describe('other testers', () => {
  it('are not compared: orifice', () => {
    const from = job([
      percent(1, 2, { orifice: { value: 0.04, unit: 'in' } }),
      percent(2, 12, { orifice: { value: 1.524, unit: 'mm' } }),
    ])
    expect(one(from, 2, 'above the tightest')).toBeUndefined()
    expect(one(from, 2, 'one tester')?.about).toBe('reading')
  })
  it('are the same where only the unit differs', () => {
    const from = job([
      percent(1, 2, { orifice: { value: 0.04, unit: 'in' } }),
      percent(2, 12, { orifice: { value: 1.016, unit: 'mm' } }),
    ])
    expect(one(from, 2, 'above the tightest')?.verdict).toBe('watch')
  })
  it('are not compared: pressure', () => {
    expect(one(job([gauges(1, 80, 78), gauges(2, 40, 36)]), 2, 'one tester')).toBeDefined()
  })
})

it('gives the leak as a hole where orifice and pressure are known', () => {
  const known = percent(1, 25, { orifice: { value: 0.04, unit: 'in' } })
  expect(one(job([known]), 1, 'as a hole')).toBeUndefined()
  const pressed = pull(1, {
    form: 'percent',
    percent: 25,
    regulated: psi(80),
    orifice: { value: 0.04, unit: 'in' },
  })
  expect(one(job([pressed]), 1, 'as a hole')).toMatchObject({ value: 1.05, unit: 'mm', verdict: 'noted' })
})

it('says that a cold engine spoils it', () => {
  expect(one(job([percent(1, 25, { engine: 'cold' })]), 1, 'engine cold')?.about).toBe('reading')
})
