import { describe, expect, it } from 'vitest'
import type { Circumstances } from '../job/job-schema.ts'
import type { Pull, PullOf } from '../job/pull-schema.ts'
import { vacuumBand } from './bars.ts'
import { inHg, jobWith, vacuum } from './testing/evidence-job.ts'
import { judgeVacuum } from './vacuum.ts'
import type { VacuumEntry } from './vacuum-entry.ts'

const judge = (pulls: Pull[], circumstances: Circumstances = {}) =>
  judgeVacuum(jobWith({ pulls, circumstances }), 'as found')
const ruled = (rule: string, pulls: Pull[], circumstances: Circumstances = {}) =>
  judge(pulls, circumstances).find(one => one.rule === rule)
/** The pull with more noted. */
const noting = (pull: PullOf<'vacuum'>, more: Partial<VacuumEntry>): PullOf<'vacuum'> => ({
  ...pull,
  entry: { ...pull.entry, ...more },
})

describe('idle at sea level, 17 to 21 inHg', () => {
  it.each([
    [16.7, 'outside'],
    [16.8, 'cannot be called'],
    [17, 'cannot be called'],
    [17.2, 'cannot be called'],
    [17.25, 'within'],
    [20.75, 'within'],
    [21, 'cannot be called'],
    [21.25, 'cannot be called'],
    [21.3, 'watch'],
  ] as const)('%d inHg is %s', (reading, verdict) => {
    expect(ruled('idle', [vacuum('idle', reading)])).toMatchObject({ verdict, unit: 'inHg', plusMinus: 0.25 })
  })
  it('says when sea level is only assumed', () => {
    expect(ruled('idle', [vacuum('idle', 19)])?.limit).toContain('sea level assumed')
  })
})

describe('idle at 5000 ft, 12.0 to 16.0 inHg', () => {
  const altitude = { altitude: { value: 5000, unit: 'ft' as const } }
  it.each([
    [11.6, 'outside'],
    [12, 'cannot be called'],
    [14, 'within'],
    [16, 'cannot be called'],
    [18, 'watch'],
  ] as const)('%d inHg is %s', (reading, verdict) => {
    expect(ruled('idle', [vacuum('idle', reading)], altitude)).toMatchObject({ verdict })
  })
  it('leaves the word to a barometer', () => {
    const both = { ...altitude, barometer: inHg(29.92) }
    expect(ruled('idle', [vacuum('idle', 14)], both)).toMatchObject({ verdict: 'outside' })
    expect(ruled('idle', [vacuum('idle', 14)], both)?.limit).toContain('barometer')
  })
})

describe('a reading above the air pressure', () => {
  it('is set aside, with the others still judged', () => {
    const verdicts = judge([vacuum('idle', 31), vacuum('idle', 19)])
    expect(verdicts.find(one => one.rule === 'possible at all, idle')).toMatchObject({
      verdict: 'cannot be called',
      about: 'reading',
      value: 31,
    })
    expect(verdicts.find(one => one.rule === 'idle')).toMatchObject({ verdict: 'within', value: 19 })
  })
  it('is measured against the local air, and by its rebound too', () => {
    const high = { altitude: { value: 10_000, unit: 'ft' as const } }
    expect(ruled('possible at all, idle', [vacuum('idle', 21)], high)).toBeDefined()
    expect(ruled('possible at all, idle', [vacuum('idle', 21)])).toBeUndefined()
    expect(ruled('possible at all, snap', [vacuum('snap', 1, { rebound: 30.5 })])).toBeDefined()
  })
  it('leaves one that equals the air pressure standing, in any unit', () => {
    const air = { barometer: inHg(29.5) }
    expect(ruled('possible at all, idle', [vacuum('idle', 29.5)], air)).toBeUndefined()
    expect(ruled('possible at all, idle', [vacuum('idle', 29.51)], air)).toBeDefined()
    const inKPa = { barometer: { value: 99.9, unit: 'kPa' as const } }
    const pull = vacuum('idle', 0)
    const reading = { ...pull, entry: { ...pull.entry, reading: inKPa.barometer } }
    expect(ruled('possible at all, idle', [reading], inKPa)).toBeUndefined()
  })
})

describe('2500 rpm against an idle of 19', () => {
  const at = (reading: number) => ruled('2500 rpm', [vacuum('idle', 19), vacuum('2500 rpm', reading)])
  it.each([
    [21, 'within'],
    [19, 'within'],
    [18.8, 'cannot be called'],
    [18.5, 'cannot be called'],
    [18.1, 'outside'],
    [0, 'outside'],
  ] as const)('%d inHg is %s', (reading, verdict) => {
    expect(at(reading)).toMatchObject({ verdict })
  })
  it('is only noted without idle', () => {
    expect(ruled('2500 rpm', [vacuum('2500 rpm', 20)])).toMatchObject({ verdict: 'noted' })
  })
})

describe('snap', () => {
  const snap = (lowest: number, rebound?: number) => [
    vacuum('idle', 19),
    vacuum('snap', lowest, rebound === undefined ? {} : { rebound }),
  ]
  it.each([
    [0, 'within'],
    [4.9, 'within'],
    [5, 'within'],
    [5.2, 'within'],
    [5.3, 'watch'],
  ] as const)('lowest %d inHg is %s', (lowest, verdict) => {
    expect(ruled('snap, lowest', snap(lowest, 24))).toMatchObject({ verdict })
  })
  it.each([
    [24, 'within'],
    [19.4, 'within'],
    [19.3, 'cannot be called'],
    [19, 'cannot be called'],
    [18.7, 'cannot be called'],
    [18.6, 'outside'],
  ] as const)('rebound to %d inHg is %s', (rebound, verdict) => {
    expect(ruled('snap, rebound', snap(0, rebound))).toMatchObject({ verdict })
  })
  it('with a hard zero and no rebound noted is no fault', () => {
    expect(judge(snap(0)).map(one => [one.rule, one.verdict])).toEqual([
      ['idle', 'within'],
      ['snap, lowest', 'within'],
    ])
  })
  it('needs idle for its rebound', () => {
    expect(ruled('snap, rebound', [vacuum('snap', 1, { rebound: 23 })])).toMatchObject({ verdict: 'noted' })
  })
})

describe('cranking', () => {
  it.each([
    [0, 'outside'],
    [1.7, 'outside'],
    [1.8, 'cannot be called'],
    [2.4, 'cannot be called'],
    [2.5, 'within'],
    [4, 'within'],
  ] as const)('%d inHg is %s', (reading, verdict) => {
    expect(ruled('cranking', [vacuum('cranking', reading)])).toMatchObject({ verdict })
  })
  it('follows the pressure ratio at altitude', () => {
    // 0.688 of sea level at 10000 ft: 1.4 to 1.7 inHg.
    const high = { altitude: { value: 10_000, unit: 'ft' as const } }
    expect(ruled('cranking', [vacuum('cranking', 1.8)], high)).toMatchObject({ verdict: 'within' })
    expect(ruled('cranking', [vacuum('cranking', 1.1)], high)).toMatchObject({ verdict: 'outside' })
  })
})

describe('the needle', () => {
  it('steady says nothing more', () => {
    expect(judge([vacuum('idle', 19, { needle: 'steady' })]).map(one => one.rule)).toEqual(['idle'])
  })
  it('dropping in time at idle leaves the cause open', () => {
    const found = ruled('needle at idle: regular drop', [vacuum('idle', 17.5, { needle: 'regular drop' })])
    expect(found).toMatchObject({ verdict: 'watch' })
    expect(found?.why).toMatch(/ignition miss, a leaking valve or a head gasket/)
  })
  it('flutters while cranking by nature, and only unevenness counts', () => {
    const even = [vacuum('cranking', 4, { needle: 'fast vibration' })]
    expect(judge(even).map(one => one.rule)).toEqual(['cranking'])
    const uneven = [vacuum('cranking', 4, { needle: 'irregular drop' })]
    expect(ruled('needle at cranking: irregular drop', uneven)?.why).toContain('Uneven pulses')
  })
  it('is said once for each state of the engine', () => {
    const twice = [
      vacuum('idle', 18, { needle: 'slow float' }),
      vacuum('idle', 17.9, { needle: 'slow float' }),
    ]
    expect(judge(twice).filter(one => one.rule.startsWith('needle'))).toHaveLength(1)
  })
})

describe('2500 rpm held', () => {
  it.each([
    ['holds', 'within'],
    ['rises', 'within'],
    ['falls slowly', 'watch'],
    ['falls toward zero', 'outside'],
  ] as const)('%s: %s', (trend, verdict) => {
    const pulls = [vacuum('idle', 19), noting(vacuum('2500 rpm', 19), { trend })]
    expect(ruled('2500 rpm, held', pulls)).toMatchObject({ verdict })
  })
  it('counts the worst of several pulls', () => {
    const pulls = (['holds', 'falls slowly'] as const).map(trend => noting(vacuum('2500 rpm', 19), { trend }))
    expect(ruled('2500 rpm, held', pulls)).toMatchObject({ verdict: 'watch' })
  })
})

describe('trailing throttle against an idle of 19', () => {
  it.each([
    [22, 'within'],
    [19.4, 'within'],
    [19.2, 'cannot be called'],
    [18.5, 'watch'],
  ] as const)('%d inHg is %s', (reading, verdict) => {
    const pulls = [vacuum('idle', 19), vacuum('trailing throttle', reading)]
    expect(ruled('trailing throttle', pulls)).toMatchObject({ verdict, source: 'common practice' })
  })
  it('is only noted without idle', () => {
    expect(ruled('trailing throttle', [vacuum('trailing throttle', 22)])).toMatchObject({ verdict: 'noted' })
  })
})

describe('after a snap the needle', () => {
  const settled = (value: number) =>
    ruled('snap, settled', [vacuum('idle', 19), noting(vacuum('snap', 0), { settled: inHg(value) })])
  it('is back where it idled', () => {
    expect(settled(19.3)).toMatchObject({ verdict: 'within' })
  })
  it('may hang below', () => {
    expect(settled(17)).toMatchObject({ verdict: 'watch', why: expect.stringContaining('back pressure') })
  })
})

describe('rules of the shop and of the maker', () => {
  it('idle at 16 is low by the common rule and within by another', () => {
    expect(ruled('idle', [vacuum('idle', 16)])).toMatchObject({ verdict: 'outside' })
    const other = ruled('idle', [vacuum('idle', 16)], { rules: { idleVacuum: 'idle-15-22' } })
    expect(other).toMatchObject({ verdict: 'within', source: expect.stringContaining('college textbook') })
  })
  it('a typed specification wins, is named, and is not corrected for altitude', () => {
    const specification = { idleVacuumMinimum: inHg(14), idleVacuumMaximum: inHg(16) }
    const typed = { specification, altitude: { value: 5000, unit: 'ft' as const } }
    expect(ruled('idle', [vacuum('idle', 15)], typed)).toMatchObject({
      verdict: 'within',
      source: 'specification typed for this vehicle',
      limit: expect.stringContaining('not corrected'),
    })
    expect(ruled('idle', [vacuum('idle', 13)], typed)).toMatchObject({ verdict: 'outside' })
    expect(ruled('idle', [vacuum('idle', 17)], typed)).toMatchObject({ verdict: 'outside' })
  })
  it('takes an edge that was not typed from the rule, and never a band upside down', () => {
    const least = (value: number) => ({ specification: { idleVacuumMinimum: inHg(value) } })
    expect(ruled('idle', [vacuum('idle', 23)], least(18))).toMatchObject({ verdict: 'watch' })
    expect(ruled('idle', [vacuum('idle', 23)], least(22))).toMatchObject({ verdict: 'within' })
    const most = { specification: { idleVacuumMaximum: inHg(15) } }
    expect(ruled('idle', [vacuum('idle', 14)], most)).toMatchObject({ verdict: 'within' })
  })
  it('cranking at 3 is enough by the common rule and not by those for older engines', () => {
    expect(ruled('cranking', [vacuum('cranking', 3)])).toMatchObject({ verdict: 'within' })
    expect(
      ruled('cranking', [vacuum('cranking', 3)], { rules: { crankingVacuum: 'cranking-4' } }),
    ).toMatchObject({
      verdict: 'outside',
      source: expect.stringContaining('MV8500'),
    })
    expect(
      ruled('cranking', [vacuum('cranking', 4)], { rules: { crankingVacuum: 'cranking-4' } }),
    ).toMatchObject({
      verdict: 'cannot be called',
    })
  })
})

describe('how it was cranked', () => {
  const cranked = (reading: number, conditions: { throttle?: 'open' | 'closed'; crankingRpm?: number }) =>
    judgeVacuum(
      {
        ...jobWith({ pulls: [vacuum('cranking', reading)] }),
        setUps: [{ test: 'vacuum', stage: 'as found', conditions }],
      },
      'as found',
    ).find(one => one.rule === 'cranking')
  it('with the throttle open low vacuum is no finding', () => {
    expect(cranked(0, { throttle: 'open' })).toMatchObject({ verdict: 'cannot be called' })
    expect(cranked(0, { throttle: 'closed' })).toMatchObject({ verdict: 'outside' })
  })
  it('without speed and voltage the number is said to mean little', () => {
    expect(cranked(1, {})?.why).toContain('cranking speed')
    expect(cranked(1, { crankingRpm: 210 })?.why).not.toContain('means little')
  })
  it('shows the band of its flutter, evenness before level', () => {
    const range = { low: inHg(3), high: inHg(5) }
    const pull = noting(vacuum('cranking', 4, { needle: 'irregular drop' }), { range })
    expect(judge([pull]).map(one => [one.rule, one.verdict])).toEqual([
      ['needle at cranking: irregular drop', 'watch'],
      ['cranking, flutter', 'noted'],
      ['cranking', 'within'],
    ])
    expect(ruled('cranking, flutter', [noting(vacuum('cranking', 4), { range })])?.why).toContain(
      'Nobody noted whether the pulses were alike',
    )
  })
})

it('sets aside a swing or a settled reading above the air pressure too', () => {
  const range = { low: inHg(18), high: inHg(31) }
  expect(ruled('possible at all, idle', [noting(vacuum('idle', 19), { range })])).toMatchObject({ value: 31 })
  const pull = noting(vacuum('trailing throttle', 24), { settled: inHg(35) })
  expect(ruled('possible at all, trailing throttle', [pull])).toBeDefined()
})

it('draws the idle band where it judges', () => {
  const job = jobWith({
    pulls: [vacuum('idle', 14)],
    circumstances: { altitude: { value: 5000, unit: 'ft' } },
  })
  const band = vacuumBand(job, 'as found')
  expect(band).toMatchObject({
    unit: 'inHg',
    idle: { value: 14, plusMinus: 0.25 },
    atmosphere: { basis: 'altitude' },
  })
  expect(band.low).toBeCloseTo(11.97, 2)
  expect(band.high).toBeCloseTo(15.97, 2)
})
it('draws what was typed, and the swing', () => {
  const range = { low: inHg(18), high: inHg(19.5) }
  const job = jobWith({
    pulls: [noting(vacuum('idle', 19), { range })],
    circumstances: { specification: { idleVacuumMinimum: inHg(18), idleVacuumMaximum: inHg(20) } },
  })
  expect(vacuumBand(job, 'as found')).toMatchObject({
    low: 18,
    high: 20,
    typed: 'both',
    swing: { low: 18, high: 19.5 },
    source: 'specification typed for this vehicle',
  })
})
