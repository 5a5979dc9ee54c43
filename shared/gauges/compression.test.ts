import { describe, expect, it } from 'vitest'
import type { Circumstances } from '../job/job-schema.ts'
import type { Pull } from '../job/pull-schema.ts'
import { judgeCompression } from './compression.ts'
import { compressionValues } from './compression-values.ts'
import { compression, jobWith, onePullEach, psi, voided } from './testing/evidence-job.ts'
import type { CylinderVerdict } from './verdict.ts'

const judge = (pulls: Pull[], circumstances: Circumstances = {}, layout = 'i6-153624') =>
  judgeCompression(jobWith({ pulls, circumstances, layout }), 'as found')

const one = (verdicts: readonly CylinderVerdict[], cylinder: number, rule: string) =>
  verdicts.find(verdict => verdict.cylinder === cylinder && verdict.rule === rule)

/** Two cylinders, the second `below` the first's 150 psi. */
const pair = (second: number, circumstances: Circumstances = {}) =>
  judge(onePullEach([150, second]), circumstances)

describe('the value of a cylinder', () => {
  it('is the middle of its valid dry pulls, half a division or half their range wide', () => {
    const job = jobWith({
      pulls: [
        compression(1, 150, { firstPuff: 110 }),
        compression(1, 148, { firstPuff: 112 }),
        compression(1, 90, { firstPuff: 20 }),
        voided(compression(1, 20)),
        compression(1, 190, { wet: true }),
        compression(1, 30, { stage: 'after repair' }),
      ],
    })
    expect(compressionValues(job, 'as found')).toEqual([
      {
        cylinder: 1,
        finals: [90, 148, 150],
        pulls: 3,
        range: 60,
        plusMinus: 30,
        between: 30,
        read: 2.5,
        testers: [],
        dry: 148,
        firstPuff: 110,
        finalOfPuffed: 148,
        wet: 190,
      },
    ])
  })
  it('is never finer than half a scale division', () => {
    const [value] = compressionValues(
      jobWith({ pulls: [compression(1, 150), compression(1, 150)] }),
      'as found',
    )
    expect(value?.plusMinus).toBe(2.5)
  })
})

describe('how far below the highest', () => {
  it.each([
    [134, 'within', 16],
    [133, 'cannot be called', 17],
    [130, 'cannot be called', 20],
    [127, 'cannot be called', 23],
    [126, 'outside', 24],
  ] as const)('150 against %d psi is %s', (second, verdict, value) => {
    const found = one(pair(second), 2, 'below highest')
    expect(found).toMatchObject({ verdict, value, plusMinus: 3.5, unit: 'psi', source: 'common practice' })
    expect(found?.limit).toContain('20\u00a0psi')
  })
  it('names the highest, the value and how it was reached', () => {
    const found = one(
      judge([compression(1, 152), compression(4, 116), compression(4, 120)]),
      4,
      'below highest',
    )
    expect(found?.why).toContain('118\u00a0psi (middle of 116\u00a0psi, 120\u00a0psi)')
    expect(found?.why).toContain('cylinder 1')
  })
  it('says nothing with one cylinder measured', () => {
    const verdicts = judge([compression(1, 150)])
    expect(verdicts.map(({ rule, verdict }) => [rule, verdict])).toEqual([
      ['usual floor', 'noted'],
      ['repeat', 'noted'],
    ])
  })
  it('widens with pulls that do not repeat', () => {
    const verdicts = judge([compression(1, 150), compression(2, 110), compression(2, 140)])
    expect(one(verdicts, 2, 'below highest')).toMatchObject({ verdict: 'cannot be called', value: 25 })
  })
})

describe('share of the highest', () => {
  it.each([
    [117, 'within', 78],
    [115.5, 'cannot be called', 77],
    [112.5, 'cannot be called', 75],
    [109.5, 'cannot be called', 73],
    [109, 'outside', 72.7],
  ] as const)('of 150: %d psi is %s', (second, verdict, value) => {
    const found = one(pair(second), 2, 'share of highest')
    expect(found).toMatchObject({ verdict, value, unit: '%' })
    expect(found?.source).toContain('TM 5-4210-230-14&P-1')
  })
  it('is left out when nothing was pressed at all, which the floor reports', () => {
    const verdicts = judge(onePullEach([0, 0]))
    expect(one(verdicts, 1, 'share of highest')).toBeUndefined()
    expect(one(verdicts, 1, 'usual floor')?.verdict).toBe('watch')
  })
})

describe('a typed specification', () => {
  it('has its spread win over both common rules', () => {
    const verdicts = pair(110, { specification: { compressionSpread: psi(60) } })
    expect(one(verdicts, 2, 'below highest')).toMatchObject({
      verdict: 'within',
      source: 'specification typed for this vehicle',
    })
    expect(one(verdicts, 2, 'share of highest')).toBeUndefined()
  })
  it.each([
    [132.5, 'within'],
    [132, 'cannot be called'],
    [127.5, 'cannot be called'],
    [127, 'outside'],
  ] as const)('of at least 130 psi: %d psi is %s', (second, verdict) => {
    const verdicts = pair(second, { specification: { compressionMinimum: psi(130) } })
    expect(one(verdicts, 2, 'specified minimum')).toMatchObject({ verdict, value: second })
    expect(one(verdicts, 2, 'usual floor')).toBeUndefined()
  })
  it.each([
    [197.5, 'within'],
    [201, 'cannot be called'],
    [203, 'watch'],
  ] as const)('of at most 200 psi: %d psi is %s', (second, verdict) => {
    const verdicts = pair(second, { specification: { compressionMaximum: psi(200) } })
    expect(one(verdicts, 2, 'specified maximum')).toMatchObject({ verdict, value: second })
  })
  it('cannot condemn at altitude what would pass at sea level', () => {
    const circumstances = {
      altitude: { value: 5000, unit: 'ft' as const },
      specification: { compressionMinimum: psi(130) },
    }
    const verdicts = judge(onePullEach([125, 95]), circumstances)
    // 130 psi at sea level is about 108 at 5000 ft.
    expect(one(verdicts, 1, 'specified minimum')).toMatchObject({ verdict: 'cannot be called' })
    expect(one(verdicts, 1, 'specified minimum')?.why).toContain('108.2\u00a0psi')
    expect(one(verdicts, 2, 'specified minimum')).toMatchObject({ verdict: 'outside' })
  })
})

describe('the floor without a specification', () => {
  it.each([
    [103, 'noted'],
    [102, 'cannot be called'],
    [98, 'cannot be called'],
    [97, 'watch'],
  ] as const)('%d psi is %s', (final, verdict) => {
    expect(one(judge(onePullEach([final])), 1, 'usual floor')).toMatchObject({ verdict })
  })
  it('falls with the air pressure', () => {
    const circumstances = { altitude: { value: 10_000, unit: 'ft' as const } }
    expect(one(judge(onePullEach([75]), circumstances), 1, 'usual floor')).toMatchObject({ verdict: 'noted' })
  })
})

describe('first puff', () => {
  const puff = (firstPuff: number, final = 150) => judge([compression(1, final, { firstPuff })])
  it.each([
    [109, 'within'],
    [108, 'cannot be called'],
    [105, 'cannot be called'],
    [102, 'cannot be called'],
    [101, 'watch'],
  ] as const)('%d of 150 psi is %s', (firstPuff, verdict) => {
    expect(one(puff(firstPuff), 1, 'first puff')).toMatchObject({ verdict })
  })
  it('above the final is a misreading, not a verdict on the cylinder', () => {
    expect(one(puff(160), 1, 'first puff')).toMatchObject({ verdict: 'noted', about: 'reading' })
  })
  it('says that the tester may do it when all cylinders are low', () => {
    const verdicts = judge([1, 2, 3, 4].map(cylinder => compression(cylinder, 150, { firstPuff: 80 })))
    expect(one(verdicts, 3, 'first puff')?.why).toContain('hose')
  })
  it('is held against the finals it belongs to', () => {
    const verdicts = judge([compression(1, 120, { firstPuff: 100 }), compression(1, 124)])
    expect(one(verdicts, 1, 'first puff')?.value).toBe(83.3)
  })
})

describe('repeats', () => {
  it.each([
    [150, 155, 'within'],
    [150, 155.5, 'watch'],
    [150, 156, 'watch'],
  ] as const)('%d and %d psi: %s', (a, b, verdict) => {
    expect(one(judge([compression(1, a), compression(1, b)]), 1, 'repeat')).toMatchObject({
      verdict,
      about: 'reading',
    })
  })
  it('asks for a second pull', () => {
    expect(one(judge([compression(1, 150)]), 1, 'repeat')).toMatchObject({ verdict: 'noted', unit: 'pull' })
  })
  it('does not hold a wet pull against dry ones', () => {
    const verdicts = judge([compression(1, 120), compression(1, 121), compression(1, 160, { wet: true })])
    expect(one(verdicts, 1, 'repeat')).toMatchObject({ verdict: 'within', value: 1 })
  })
})

describe('wet pull', () => {
  const mates = [compression(2, 152), compression(3, 150)]
  it('of a low cylinder that does not rise points away from rings', () => {
    const found = one(
      judge([...mates, compression(1, 100), compression(1, 102, { wet: true })]),
      1,
      'wet rise',
    )
    expect(found).toMatchObject({ verdict: 'noted', value: 2, unit: '%' })
    expect(found?.why).toContain('does not help')
    expect(found?.limit).toContain('oil takes up chamber space')
  })
  it('that rises asks for a good cylinder to compare with', () => {
    const found = one(
      judge([...mates, compression(1, 100), compression(1, 140, { wet: true })]),
      1,
      'wet rise',
    )
    expect(found?.value).toBe(40)
    expect(found?.why).toContain('give a good cylinder the same oil')
  })
  it('is told apart by a good cylinder with the same oil', () => {
    const good = compression(2, 170, { wet: true })
    const more = judge([...mates, good, compression(1, 100), compression(1, 140, { wet: true })])
    expect(one(more, 1, 'wet rise')?.why).toContain('clearly more: rings, piston or bore')
    expect(one(more, 2, 'wet rise')?.why).toContain('not low dry')
  })
  it.each([
    [112, 'no more'],
    [116, 'no more'],
    [117, 'clearly more'],
    [140, 'clearly more'],
  ] as const)('from 100 to %d psi, beside 152 to 170, is %s', (wet, words) => {
    const good = compression(2, 170, { wet: true })
    const verdicts = judge([...mates, good, compression(1, 100), compression(1, wet, { wet: true })])
    expect(one(verdicts, 1, 'wet rise')?.why).toContain(words)
  })
  it('proves less where the bank leans', () => {
    const pulls = [...mates, compression(1, 100), compression(1, 102, { wet: true })]
    expect(one(judge(pulls, {}, 'v6-oddeven-123456'), 1, 'wet rise')?.why).toContain('leans')
    expect(one(judge(pulls), 1, 'wet rise')?.why).not.toContain('leans')
  })
})

it('words values and limits in the units asked for', () => {
  const job = jobWith({ pulls: onePullEach([150, 126]) })
  const kPa = judgeCompression(job, 'as found', { pressure: 'kPa', vacuum: 'kPa' })
  expect(one(kPa, 2, 'below highest')).toMatchObject({
    unit: 'kPa',
    value: 165,
    plusMinus: 24,
    verdict: 'outside',
  })
  expect(one(kPa, 2, 'below highest')?.limit).toContain('138\u00a0kPa')
  const bar = judgeCompression(job, 'as found', { pressure: 'bar', vacuum: 'inHg' })
  expect(one(bar, 2, 'below highest')).toMatchObject({ unit: 'bar', value: 1.65 })
})

it('leaves out pulls of cylinders that the engine no longer has', () => {
  expect(judge([compression(9, 100), compression(1, 150)]).map(verdict => verdict.cylinder)).not.toContain(9)
})
