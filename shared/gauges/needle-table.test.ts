import { describe, expect, it } from 'vitest'
import type { Pull, PullOf } from '../job/pull-schema.ts'
import { needleRows, needleTable, rowWords } from './needle-table.ts'
import { inHg, jobWith, vacuum } from './testing/evidence-job.ts'
import { judgeVacuum } from './vacuum.ts'
import { type NeedleBehaviour, needleBehaviours } from './vacuum-entry.ts'

it('has a row with causes and a source for every behaviour a person can pick', () => {
  expect(new Set(needleTable.map(row => row.needle))).toEqual(new Set(needleBehaviours))
  for (const row of needleTable) {
    expect(row.causes.length).toBeGreaterThan(5)
    expect(row.source.length).toBeGreaterThan(5)
  }
})
it('leaves every row standing where nothing was measured, and drops those that a number contradicts', () => {
  expect(needleRows('irregular drop', {})).toHaveLength(4)
  const wide = needleRows('irregular drop', { swing: 6 })
  expect(wide).toHaveLength(2)
  expect(rowWords(needleRows('steady', { reading: 15, below: 2 })).causes).toContain('ignition late')
  expect(rowWords(needleRows('steady', { reading: 11, below: 6 })).causes).not.toContain('ignition late')
})
it('names each source once', () => {
  const { source } = rowWords(needleRows('irregular drop', {}))
  expect(source.split('; ')).toHaveLength(new Set(source.split('; ')).size)
})

const swinging = (
  needle: NeedleBehaviour,
  [low, high]: readonly [number, number],
  reading = (low + high) / 2,
): PullOf<'vacuum'> => {
  const pull = vacuum('idle', reading, { needle })
  return { ...pull, entry: { ...pull.entry, range: { low: inHg(low), high: inHg(high) } } }
}
const layouts = { 3: 'i3', 4: 'i4', 6: 'i6', 8: 'v8' } as const
const ruled = (rule: string, cylinders: keyof typeof layouts, pulls: Pull[]) =>
  judgeVacuum(jobWith({ layout: layouts[cylinders], pulls }), 'as found').find(one => one.rule === rule)

describe('ripple that few cylinders make by nature', () => {
  it.each([
    [3, 1.5, 'within'],
    [4, 1.5, 'within'],
    [4, 2, 'cannot be called'],
    [4, 2.5, 'watch'],
    [6, 0.5, 'within'],
    [6, 1.5, 'watch'],
    [8, 0.1, 'within'],
    [8, 1, 'watch'],
  ] as const)('%d cylinders swinging %d inHg: %s', (cylinders, wide, verdict) => {
    expect(ruled('idle, swing', cylinders, [swinging('steady', [18, 18 + wide])])).toMatchObject({ verdict })
  })
  it('is no fault on a four, seen as a flicker or as a vibration', () => {
    for (const needle of ['small flicker', 'fast vibration'] as const) {
      expect(ruled(`needle at idle: ${needle}`, 4, [swinging(needle, [18, 19])])?.verdict).toBe('within')
      expect(ruled(`needle at idle: ${needle}`, 4, [vacuum('idle', 18.5, { needle })])?.verdict).toBe('noted')
    }
  })
  it('is watched on a four where it is wider, and on an eight', () => {
    expect(ruled('needle at idle: fast vibration', 4, [swinging('fast vibration', [15, 19])])).toMatchObject({
      verdict: 'watch',
      why: expect.stringContaining('valve guides'),
    })
    expect(ruled('needle at idle: small flicker', 8, [swinging('small flicker', [18, 19.2])])?.verdict).toBe(
      'watch',
    )
  })
  it('does not excuse a drop', () => {
    expect(ruled('needle at idle: regular drop', 4, [swinging('regular drop', [18, 19])])?.verdict).toBe(
      'watch',
    )
  })
})

describe('low and steady', () => {
  it('says what charts give for so much below', () => {
    const found = ruled('idle', 6, [vacuum('idle', 10, { needle: 'steady' })])
    expect(found).toMatchObject({ verdict: 'outside' })
    expect(found?.why).toContain('an air leak in the induction')
    expect(found?.why).toContain('valve timing')
    expect(found?.source).toContain('hand vacuum pump manual')
  })
  it('reads the charts at sea level: at 5000 ft a reading of 10 stands for 15', () => {
    const job = jobWith({
      pulls: [vacuum('idle', 10, { needle: 'steady' })],
      circumstances: { altitude: { value: 5000, unit: 'ft' } },
    })
    const found = judgeVacuum(job, 'as found').find(one => one.rule === 'idle')
    expect(found?.why).toContain('ignition late')
    expect(found?.why).not.toContain('an air leak in the induction')
  })
})

it('says that a slow return after a snap is back pressure', () => {
  expect(
    ruled('needle at snap: slow return', 6, [vacuum('snap', 1, { needle: 'slow return' })])?.why,
  ).toContain('exhaust back pressure')
  expect(
    judgeVacuum(jobWith({ pulls: [vacuum('snap', 1, { needle: 'fast vibration' })] }), 'as found'),
  ).toHaveLength(1)
})
