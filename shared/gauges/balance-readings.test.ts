import { describe, expect, it } from 'vitest'
import type { PullOf } from '../job/pull-schema.ts'
import { judgeBalance } from './balance.ts'
import { judgeBaseline } from './balance-readings.ts'
import { cut, jobWith } from './testing/evidence-job.ts'

/** Cut-outs a minute apart, each losing 90 rpm and, where given, vacuum. */
const round = (before: readonly number[], vacuum?: readonly number[]): PullOf<'balance'>[] =>
  before.map((rpm, i) => {
    const inHg = vacuum?.[i]
    return {
      ...cut((i % 6) + 1, [rpm, rpm - 90], inHg === undefined ? undefined : [inHg, inHg - 2]),
      at: new Date(Date.UTC(2026, 2, 2, 9, i)).toISOString(),
    }
  })
const baseline = (pulls: PullOf<'balance'>[]) => judgeBaseline(jobWith({ pulls }), 'as found')

describe('the baseline', () => {
  it('that stands still is within', () => {
    expect(baseline(round([800, 801, 799, 800, 800, 801]))).toMatchObject([
      { rule: 'baseline speed', verdict: 'within', about: 'reading' },
    ])
  })
  it('that creeps evenly is noted with its creep a cut', () => {
    const found = baseline(round([700, 710, 720, 730, 740, 750]))
    expect(found).toMatchObject([{ verdict: 'noted', value: 10, unit: 'rpm' }])
    expect(found[0]?.why).toContain('rose evenly')
  })
  it('that jumps cannot be made good, and says so', () => {
    const found = baseline(round([700, 701, 700, 900, 901, 900]))
    expect(found).toMatchObject([{ verdict: 'watch', value: 201 }])
    expect(found[0]?.why).toContain('could not be removed')
  })
  it('with one misread speed says to look at it', () => {
    const found = baseline(round([800, 800, 800, 880, 800, 800]))
    expect(found).toMatchObject([{ verdict: 'watch' }])
    expect(found[0]?.why).toContain('misread')
  })
  it('that hunts makes every drop less sure, and says so', () => {
    const found = baseline(round([700, 760, 700, 760, 700, 760, 700, 760]))
    expect(found).toMatchObject([{ verdict: 'watch', why: expect.stringContaining('hunts by') }])
  })
  it('of three cuts says that drift could not be removed where it moved, and else nothing', () => {
    expect(baseline(round([700, 730, 760]))).toMatchObject([{ verdict: 'noted', value: 60 }])
    expect(baseline(round([700, 701, 702]))).toEqual([])
  })
  it('of vacuum is looked at beside that of speed', () => {
    const found = baseline(round([800, 800, 800, 800, 800], [17, 17.4, 17.8, 18.2, 18.6]))
    expect(found).toMatchObject([
      { rule: 'baseline speed', verdict: 'within' },
      { rule: 'baseline vacuum', verdict: 'noted', value: 0.4, unit: 'inHg' },
    ])
  })
})

describe('speed against vacuum', () => {
  const both = (rpm: number, inHg: number) => [
    ...[1, 2, 4, 5].map(cylinder => cut(cylinder, [800, 700], [19, 16])),
    cut(3, [800, 800 - rpm], [19, 19 - inHg]),
  ]
  const flag = (rpm: number, inHg: number) =>
    judgeBalance(jobWith({ pulls: both(rpm, inHg) }), 'as found').filter(
      one => one.rule === 'speed against vacuum',
    )
  it('is flagged where the shares cannot both be right', () => {
    const found = flag(30, 3)
    expect(found).toMatchObject([{ cylinder: 3, verdict: 'watch', about: 'reading', value: 70, unit: '%' }])
    expect(found[0]?.why).toContain('brought the speed back')
    expect(flag(100, 0.5)[0]?.why).toContain('damped')
  })
  it('is not flagged where they agree within their errors', () => {
    expect(flag(30, 0.9)).toEqual([])
    expect(flag(80, 3)).toEqual([])
  })
})

it('says beside a drop that was freed from drift what its own baseline gives', () => {
  const pulls = round([700, 700, 715, 700, 700, 700])
  const why = (cylinder: number) =>
    judgeBalance(jobWith({ pulls }), 'as found').find(
      one => one.rule === 'speed drop' && one.cylinder === cylinder,
    )?.why
  expect(why(3)).toContain('Drops 75\u00a0rpm')
  expect(why(3)).toContain('own baseline alone it drops 90\u00a0rpm')
  expect(why(1)).not.toContain('own baseline')
})
