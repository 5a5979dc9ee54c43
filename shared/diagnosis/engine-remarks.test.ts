import { describe, expect, it } from 'vitest'
import { compression, cut, jobWith, onePullEach, reading, vacuum } from '../gauges/testing/evidence-job.ts'
import type { Job } from '../job/job-schema.ts'
import type { Condition } from '../plug/condition.ts'
import { engineRemarks } from './engine-remarks.ts'

const kinds = (job: Job) => engineRemarks(job, 'as found').map(one => one.kind)
const remark = (job: Job, kind: string) => engineRemarks(job, 'as found').find(one => one.kind === kind)
const plugs = (conditions: readonly Condition[]) =>
  Object.fromEntries(conditions.map((condition, i) => [i + 1, reading(condition)]))

const v6 = 'v6-oddeven-123456'
const v8 = 'v8-cross-oddeven-18436572'

it('says nothing of an engine in order', () => {
  const job = jobWith({
    readings: plugs(['normal', 'normal', 'normal', 'normal', 'normal', 'normal']),
    pulls: [...onePullEach([150, 151, 149, 150, 152, 150]), vacuum('idle', 19)],
  })
  expect(kinds(job)).toEqual([])
})

describe('two neighbours low', () => {
  const psi = [160, 161, 97, 158, 101, 160, 159, 160]
  it('points to the gasket between them', () => {
    const found = remark(jobWith({ layout: v8, pulls: onePullEach(psi) }), 'neighbours low')
    expect(found).toMatchObject({ cylinders: [3, 5] })
    expect(found?.text).toMatch(/head gasket.*wet pull on both would tell/)
    expect(found?.source).toContain('TM 5-4210-230-14&P-1')
  })
  it('the more so when oil helped neither', () => {
    const wet = [
      compression(3, 104, { wet: true }),
      compression(5, 107, { wet: true }),
      compression(7, 172, { wet: true }),
    ]
    const found = remark(jobWith({ layout: v8, pulls: [...onePullEach(psi), ...wet] }), 'neighbours low')
    expect(found?.text).toContain('Oil helped neither')
  })
  it('needs them side by side in one bank', () => {
    // Odd cylinders stand in one bank, even ones in the other: 3 and 4 are no neighbours.
    expect(
      kinds(jobWith({ layout: v8, pulls: onePullEach([160, 161, 97, 101, 160, 160, 159, 160]) })),
    ).toEqual([])
  })
  it('needs both clearly low', () => {
    expect(kinds(jobWith({ pulls: onePullEach([160, 140, 97, 160, 160, 160]) }))).toEqual([])
  })
})

describe('one bank', () => {
  it('low throughout points to its valve timing', () => {
    const found = remark(
      jobWith({ layout: v6, pulls: onePullEach([150, 110, 151, 108, 150, 111]) }),
      'one bank low',
    )
    expect(found).toMatchObject({ cylinders: [2, 4, 6] })
    expect(kinds(jobWith({ layout: v6, pulls: onePullEach([150, 110, 151, 108, 150, 111]) }))).not.toContain(
      'neighbours low',
    )
  })
  it('is not named while the other bank is not measured', () => {
    const pulls = [compression(2, 110), compression(4, 108), compression(6, 111), compression(1, 150)]
    expect(kinds(jobWith({ layout: v6, pulls }))).not.toContain('one bank low')
  })
  it('lean throughout points to what that bank has of its own', () => {
    const job = jobWith({
      layout: v6,
      readings: plugs(['normal', 'lean', 'normal', 'lean', 'normal', 'lean']),
    })
    expect(remark(job, 'one bank lean')).toMatchObject({ cylinders: [2, 4, 6] })
  })
  it('is not named when the other bank shows it too', () => {
    const job = jobWith({ layout: v6, readings: plugs(['lean', 'lean', 'normal', 'lean', 'normal', 'lean']) })
    expect(kinds(job)).toEqual([])
  })
})

describe('all alike', () => {
  it('rich with one carbon-fouled is one pattern', () => {
    const job = jobWith({ layout: 'i4-1342', readings: plugs(['rich', 'carbon', 'rich', 'rich']) })
    expect(remark(job, 'all rich or carbon-fouled')?.text).toContain('fuel pressure')
  })
  it('needs every plug read', () => {
    expect(kinds(jobWith({ layout: 'i4-1342', readings: plugs(['lean', 'lean', 'lean']) }))).toEqual([])
    expect(kinds(jobWith({ layout: 'i4-1342', readings: plugs(['lean', 'lean', 'lean', 'lean']) }))).toEqual([
      'all lean',
    ])
  })
  it('low and even points to what they share', () => {
    expect(kinds(jobWith({ layout: 'i4-1342', pulls: onePullEach([90, 92, 91, 90]) }))).toEqual([
      'all low and even',
    ])
  })
  it('low but uneven does not', () => {
    expect(kinds(jobWith({ layout: 'i4-1342', pulls: onePullEach([90, 60, 91, 90]) }))).not.toContain(
      'all low and even',
    )
  })
})

it('coolant on one plug beside a low cylinder points to a breach between them', () => {
  const job = jobWith({
    layout: v8,
    readings: { 3: reading('coolant') },
    pulls: onePullEach([160, 161, 158, 158, 100, 160, 159, 160]),
  })
  expect(remark(job, 'coolant beside a low cylinder')).toMatchObject({ cylinders: [3, 5] })
})

it('oil in one well only is its tube seal; in several it is not said', () => {
  const oily = reading('normal', { oilInWell: true })
  expect(kinds(jobWith({ readings: { 3: oily } }))).toEqual(['oil in one well'])
  expect(kinds(jobWith({ readings: { 3: oily, 5: oily } }))).toEqual([])
})

it('companions both weak share a coil where spark is wasted', () => {
  const drops = [90, 10, 88, 91, 12, 90]
  const job = jobWith({ pulls: drops.map((drop, i) => cut(i + 1, [800, 800 - drop])) })
  // In 1-5-3-6-2-4 cylinders 2 and 5 fire half a cycle apart.
  expect(remark(job, 'companions weak')).toMatchObject({ cylinders: [2, 5] })
})

it('reports engine readings that are not in order, and readings that cannot be trusted', () => {
  const job = jobWith({
    pulls: [
      vacuum('idle', 14),
      vacuum('idle', 40),
      compression(1, 150),
      compression(1, 160),
      compression(2, 155),
    ],
  })
  expect(kinds(job)).toEqual(['vacuum, idle', 'doubtful reading', 'doubtful reading'])
  expect(engineRemarks(job, 'as found', { pressure: 'kPa', vacuum: 'kPa' })[0]?.text).toContain('kPa')
})
