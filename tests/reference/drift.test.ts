// Drift removal against synthetic rounds of cut-outs with known answers: a baseline that creeps, a normal reading noise,
// seeded. No published text gives such series, so the truth is our own arithmetic. Each test's name carries its figures:
// root mean square error of a drop in rpm, and how often the stated interval holds the true drop.
import { describe, expect, it } from 'vitest'
import { builtInLayouts } from '../../shared/engine/layouts.ts'
import { balanceValues } from '../../shared/gauges/balance-values.ts'
import { judgeBalance } from '../../shared/gauges/balance.ts'
import { jobWith } from '../../shared/gauges/testing/evidence-job.ts'
import type { Job } from '../../shared/job/job-schema.ts'
import type { PullOf } from '../../shared/job/pull-schema.ts'

/** Mulberry32: small, seeded, even. */
function seeded(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}
const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

/** Baseline at the `at`-th cut-out, rpm. */
type Course = (at: number) => number
type Setting = {
  cylinders: number
  rounds: number
  /** Standard deviation of one reading, rpm. */
  noise: number
  course: Course
  restored: boolean
  /** Added to the speed read before the first cut of the second cylinder: a misread digit. */
  misread?: number
}
type Known = { job: Job; drops: readonly number[] }

const layoutOf = (cylinders: number): string => {
  const found = builtInLayouts.find(one => one.banks.flatMap(bank => bank.cylinders).length === cylinders)
  if (!found) throw new Error(`no layout of ${cylinders} cylinders`)
  return found.id
}

function round({ cylinders, rounds, noise, course, restored, misread = 0 }: Setting, seed: number): Known {
  const random = seeded(seed)
  const weak = Math.floor(random() * cylinders)
  const drops = Array.from({ length: cylinders }, (_, i) => (i === weak ? 20 : 80 + 20 * random()))
  const read = (value: number) => Math.round(value + noise * normal(random))
  const pulls = Array.from({ length: rounds * cylinders }, (_, k): PullOf<'balance'> => {
    const cylinder = k % cylinders
    return {
      id: `cut-${k}`,
      stage: 'as found',
      at: new Date(Date.UTC(2026, 2, 2, 9, 0, 20 * k)).toISOString(),
      test: 'balance',
      cylinder: cylinder + 1,
      entry: {
        rpmBefore: read(course(k)) + (k === 1 ? misread : 0),
        rpmAfter: read(course(k + 1 / 3) - (drops[cylinder] ?? 0)),
        ...(restored ? { rpmRestored: read(course(k + 2 / 3)) } : {}),
      },
    }
  })
  return { job: jobWith({ layout: layoutOf(cylinders), pulls }), drops }
}

type Figures = {
  ours: number
  own: number
  first: number
  covered: number
  weakFound: number
  wronged: number
}
const repeats = 40

/** Over seeded rounds: `own` takes each cut's own baseline, `first` the one that the round began with. */
function figures(setting: Setting, seed: number): Figures {
  const errors = { ours: 0, own: 0, first: 0 }
  let [count, covered, weakFound, wronged] = [0, 0, 0, 0]
  for (let i = 0; i < repeats; i++) {
    const { job, drops } = round(setting, seed + i)
    const start = job.pulls.find(pull => pull.test === 'balance')?.entry.rpmBefore ?? Number.NaN
    const verdicts = judgeBalance(job, 'as found').filter(one => one.rule === 'speed drop')
    for (const value of balanceValues(job, 'as found')) {
      const truth = drops[value.cylinder - 1] ?? Number.NaN
      const after = job.pulls.flatMap(pull =>
        pull.test === 'balance' && pull.cylinder === value.cylinder ? [pull.entry.rpmAfter] : [],
      )
      const mean = after.reduce((sum, rpm) => sum + rpm, 0) / after.length
      errors.ours += (value.drop - truth) ** 2
      errors.own += (value.ownDrop - truth) ** 2
      errors.first += (start - mean - truth) ** 2
      covered += Math.abs(value.drop - truth) <= value.plusMinus ? 1 : 0
      count += 1
      const call = verdicts.find(one => one.cylinder === value.cylinder)?.verdict
      if (truth < 50) weakFound += call === 'outside' ? 1 : 0
      else wronged += call === 'outside' ? 1 : 0
    }
  }
  const rms = (sum: number) => Math.sqrt(sum / count)
  return {
    ours: rms(errors.ours),
    own: rms(errors.own),
    first: rms(errors.first),
    covered: covered / count,
    weakFound: weakFound / repeats,
    wronged: wronged / (count - repeats),
  }
}

const words = ({ ours, own, first, covered, weakFound, wronged }: Figures) =>
  `off by ${ours.toFixed(1)} rpm (own baseline ${own.toFixed(1)}, first baseline ${first.toFixed(1)}); interval holds ${(100 * covered).toFixed(0)} %; weak one called ${(100 * weakFound).toFixed(0)} %, others wronged ${(100 * wronged).toFixed(1)} %`

const counts = [3, 4, 5, 6, 8, 12]
const noises = [0, 2, 5]

describe.each(counts)('%d cylinders, two rounds, speed creeping 8 rpm a cut', cylinders => {
  const rows = noises.map(noise => {
    const found = figures({ cylinders, rounds: 2, noise, course: at => 760 + 8 * at, restored: true }, 1000)
    return [noise, words(found), found] as const
  })
  it.each(rows)('noise %d rpm: %s', (noise, _words, found) => {
    // What is left is the noise of the reading with the cylinder cut, and a little of the line's; rounding is 0.3 rpm.
    expect(found.ours).toBeLessThan(0.4 + 1.1 * noise)
    expect(found.first).toBeGreaterThan(4 * found.ours)
    expect(found.covered).toBeGreaterThan(0.95)
    expect(found.weakFound).toBeGreaterThan(0.9)
    expect(found.wronged).toBe(0)
    // Whole rpm alone are as near by either.
    expect(found.ours).toBeLessThan(found.own + (noise === 0 ? 0.1 : 0))
  })
})

describe.each(counts.filter(count => count > 3))(
  '%d cylinders, one round, no restored speed, speed sinking 12 rpm a cut',
  cylinders => {
    const rows = noises.map(noise => {
      const found = figures(
        { cylinders, rounds: 1, noise, course: at => 900 - 12 * at, restored: false },
        2000,
      )
      return [noise, words(found), found] as const
    })
    it.each(rows)('noise %d rpm: %s', (noise, _words, found) => {
      expect(found.ours).toBeLessThan(0.6 + 1.6 * noise)
      expect(found.ours).toBeLessThan(found.own)
      expect(found.covered).toBeGreaterThan(0.95)
      expect(found.wronged).toBe(0)
    })
  },
)

describe.each([4, 6, 8, 12])('%d cylinders, two rounds', cylinders => {
  const last = 2 * cylinders - 1
  const of = (course: Course, noise: number, more: { restored?: boolean; misread?: number } = {}) =>
    figures({ cylinders, rounds: 2, noise, course, restored: true, ...more }, 3000)

  const warming = of(at => 900 - 150 * (1 - Math.exp((-4 * at) / last)), 3)
  it(`warming fast and then slower, noise 3 rpm: ${words(warming)}`, () => {
    expect(warming.ours).toBeLessThan(6)
    expect(warming.first).toBeGreaterThan(5 * warming.ours)
    expect(warming.covered).toBeGreaterThan(0.97)
    expect(warming.wronged).toBe(0)
  })

  const raised = of(at => (at < cylinders - 0.01 ? 700 : 950), 3)
  it(`idle raised by 250 rpm for the second round, noise 3 rpm: ${words(raised)}`, () => {
    expect(raised.ours).toBeLessThan(6)
    expect(raised.covered).toBeGreaterThan(0.97)
    expect(raised.weakFound).toBeGreaterThan(0.95)
    expect(raised.wronged).toBe(0)
  })

  const hunting = of(() => 780, 12)
  it(`an idle that hunts, noise 12 rpm: ${words(hunting)}`, () => {
    expect(hunting.ours).toBeLessThan(hunting.own)
    expect(hunting.covered).toBeGreaterThan(0.9)
    expect(hunting.wronged).toBeLessThan(0.01)
  })
})

describe.each([4, 6, 8, 12])('%d cylinders, one round, one baseline misread by 90 rpm', cylinders => {
  const found = figures(
    { cylinders, rounds: 1, noise: 3, course: at => 800 + 6 * at, restored: true, misread: 90 },
    4000,
  )
  it(`noise 3 rpm: ${words(found)}`, () => {
    expect(found.ours).toBeLessThan(5)
    expect(found.own).toBeGreaterThan(2 * found.ours)
    expect(found.covered).toBeGreaterThan(0.97)
    expect(found.wronged).toBe(0)
  })
})
