import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { judgeMode06 } from './mode-06.ts'
import { jobWith, voided } from './testing/evidence-job.ts'
import { mode06 } from './testing/make-pull.ts'
import { asFrames, asPayload, type Sent } from './testing/mode-06-answer.ts'

/** Average and this drive of one cylinder, with open limits. */
const counters = (cylinder: number, average: number, drive: number): Sent[] => [
  { mid: 0xa1 + cylinder, tid: 0x0b, uas: 0x24, raw: [average, 0, 0xffff] },
  { mid: 0xa1 + cylinder, tid: 0x0c, uas: 0x24, raw: [drive, 0, 0xffff] },
]
const judge = (...texts: string[]) =>
  judgeMode06(jobWith({ pulls: texts.map((text, minute) => mode06(text, { minute })) }), 'as found')
const ofCounts = (drive: readonly number[]) =>
  judge(drive.map((count, i) => asFrames(counters(i + 1, count, count), '7E8').join('\n')).join('\n'))

describe('counts of the cylinders', () => {
  const verdicts = ofCounts([0, 1, 112, 0, 2, 0])
  const thisDrive = verdicts.filter(one => one.rule.startsWith('this drive'))
  it('single out the one that stands clear, and clear the others', () => {
    expect(thisDrive.map(one => [one.cylinder, one.verdict])).toEqual([
      [1, 'within'],
      [2, 'within'],
      [3, 'outside'],
      [4, 'within'],
      [5, 'watch'],
      [6, 'within'],
    ])
    expect(thisDrive[2]).toMatchObject({ rule: 'this drive (A4 0C)', value: 112, unit: 'counts' })
    expect(thisDrive[2]?.why).toContain('where, never why')
    expect(thisDrive[2]?.why).toContain('firing order')
  })
  it('move with the cylinders', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 400 }), { minLength: 6, maxLength: 6 }),
        fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6 }),
        (counts, order) => {
          const plain = ofCounts(counts)
          const moved = ofCounts(order.map(from => counts[from] ?? 0))
          const verdictOf = (list: typeof plain, cylinder: number) =>
            list.filter(one => one.cylinder === cylinder).map(one => one.verdict)
          order.forEach((from, to) => expect(verdictOf(moved, to + 1)).toEqual(verdictOf(plain, from + 1)))
        },
      ),
    )
  })
  it('of the average say that it is history, and how it fades', () => {
    const [average] = judge(asPayload(counters(5, 14, 0))).filter(one => one.value === 14)
    expect(average?.verdict).toBe('noted')
    expect(average?.why).toContain('none in this drive: this is history')
    expect(average?.why).toContain('One clean drive takes it to 12.6, 32 to nought')
  })
  it('of an average that outlives a repair are no fault any more', () => {
    const all = [1, 2, 3, 4, 5, 6].flatMap(n => counters(n, n === 5 ? 40 : 0, 0)).map(one => asPayload([one]))
    const at = (stage: 'as found' | 'after repair') =>
      judgeMode06(jobWith({ pulls: [mode06(all.join('\n'), { stage })] }), stage).find(
        one => one.value === 40,
      )
    expect(at('as found')).toMatchObject({ cylinder: 5, verdict: 'watch' })
    expect(at('after repair')).toMatchObject({ cylinder: 5, verdict: 'noted' })
  })
  it('of nought with limits of nought have not run', () => {
    const [test] = judge('46 A2 0B 24 00 00 00 00 00 00')
    expect(test).toMatchObject({ cylinder: 1, verdict: 'cannot be called', about: 'reading' })
    expect(test?.why).toContain('not completed')
  })
  it('of a full counter say that there may be more', () => {
    expect(ofCounts([0, 0, 65535, 0, 0, 0]).find(one => one.value === 65535)?.why).toContain('counter full')
  })
})

describe("the vehicle's own limits", () => {
  it('passed and failed by cylinder', () => {
    expect(judge('46 A3 81 30 04 00 00 00 02 DD')).toMatchObject([
      {
        cylinder: 2,
        verdict: 'outside',
        value: 1.56,
        unit: '%',
        limit: '0 to 1.12 %, as sent by the vehicle',
      },
    ])
    expect(judge('46 A3 81 30 00 10 00 00 02 DD')).toMatchObject([{ cylinder: 2, verdict: 'within' }])
  })
  it('of monitor A1 are not only misfire', () => {
    const [test] = judge('46 A1 84 16 12 CC 00 00 21 2B')
    expect(test).toMatchObject({ verdict: 'within', value: 441.2, unit: '°C' })
    expect(test?.cylinder).toBeUndefined()
    expect(test?.why).toContain('such as a temperature')
  })
  it('say so where the unit is not known', () => {
    expect(judge('46 A2 80 77 00 05 00 00 00 04')[0]?.why).toContain('Unit 77 is not in our table')
  })
})

it('a cylinder that the engine lacks is about the reading', () => {
  expect(judge(asPayload(counters(8, 3, 3)))).toMatchObject([
    { verdict: 'noted', about: 'reading' },
    { verdict: 'noted', about: 'reading' },
  ])
})
it('of several readings the latest counts, and voided ones do not', () => {
  expect(judge('46 A3 81 30 04 00 00 00 02 DD', '46 A3 81 30 00 00 00 00 02 DD')).toMatchObject([
    { verdict: 'within' },
  ])
  expect(judgeMode06(jobWith({ pulls: [voided(mode06('46 A3'))] }), 'as found')).toEqual([])
})
it('two modules that answer alike are told apart', () => {
  const rules = judge(
    '7E8 10 0A 46 A3 81 30 04 00\n7E8 21 00 00 02 DD\n7E9 10 0A 46 A3 81 30 00 00\n7E9 21 00 00 02 DD',
  )
  expect(rules.map(one => one.rule)).toEqual(["maker's test A3 81 from 7E8", "maker's test A3 81 from 7E9"])
})
it('reports unread lines one by one, and a page of prose as such', () => {
  expect(
    judge('hello\n46 A3 81 30 00 00 00 00 02 DD\nworld').filter(one => one.about === 'reading'),
  ).toMatchObject([
    { rule: 'line 1', value: 1 },
    { rule: 'line 3', value: 3 },
  ])
  const prose = judge(Array.from({ length: 100 }, (_, i) => `word ${i}`).join('\n'))
  expect(prose).toHaveLength(41)
  expect(prose.at(0)?.why).toContain('60 more lines')
})
