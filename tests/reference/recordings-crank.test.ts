// How near the truth the contributions to crank speed come, on made recordings with known answers: calculated with the
// recording; no published recordings were at hand. PLUGTRAY_RECORDINGS=long runs more of them and prints the table.
import { describe, expect, test } from 'vitest'
import type { Layout } from '../../shared/engine/layout-schema.ts'
import { layoutById } from '../../shared/engine/layouts.ts'
import { crankContribution } from '../../shared/recordings/crank-contribution.ts'
import { type CrankPlan, crankRecording } from '../../shared/recordings/testing/crank-recording.ts'
import { seeded } from '../../shared/recordings/testing/random.ts'
import { thinned } from '../../shared/recordings/testing/whole-recording.ts'

const long = process.env['PLUGTRAY_RECORDINGS'] === 'long'
const layoutIds: Record<number, string> = { 3: 'i3', 4: 'i4', 5: 'i5', 6: 'i6', 8: 'v8-cross-sequential' }

const layoutWith = (cylinders: number): Layout => {
  const layout = layoutById(layoutIds[cylinders] ?? '')
  if (!layout) throw new Error(`no layout with ${cylinders} cylinders`)
  return layout
}

/** One cylinder works at 60 to 85 %, the others within 3 %; 15 seconds at idle. */
function figures(cylinders: number, kind: 'teeth' | 'rpm', plan: Partial<CrankPlan>, rounds: number) {
  const layout = layoutWith(cylinders)
  let [squares, worst, covered, values, found] = [0, 0, 0, 0, 0]
  for (let seed = 1; seed <= rounds; seed += 1) {
    const random = seeded(seed + 1000 * cylinders)
    const weak = layout.firingOrder[Math.floor(random.uniform() * cylinders)] ?? 1
    const percent = Object.fromEntries(
      layout.firingOrder.map(one => [
        one,
        one === weak ? 60 + 25 * random.uniform() : 97 + 3 * random.uniform(),
      ]),
    )
    const made = crankRecording({ layout, percent, jitter: 0.002, cycleSpread: 0.1, seed, ...plan })
    const sync = thinned(made.time, made.sync)
    const result =
      kind === 'teeth'
        ? crankContribution({ kind, edges: { time: made.edges, teeth: 60, missing: 2 }, sync }, layout)
        : crankContribution({ kind, speed: thinned(made.time, made.rpm), sync }, layout)
    for (const value of result.values) {
      const away = Math.abs(value.percent - (made.truth.get(value.cylinder ?? 0) ?? Number.NaN))
      squares += away * away
      worst = Math.max(worst, away)
      values += 1
      if (away <= (value.plusMinus ?? 0)) covered += 1
    }
    if (result.values.toSorted((a, b) => a.percent - b.percent)[0]?.cylinder === weak) found += 1
  }
  return { rms: Math.sqrt(squares / values), worst, covered: covered / values, found, of: rounds }
}

describe('contributions to crank speed at idle', () => {
  const cases = ([3, 4, 5, 6, 8] as const).flatMap(cylinders => [
    { cylinders, kind: 'teeth' as const, plan: {} },
    { cylinders, kind: 'rpm' as const, plan: {} },
    { cylinders, kind: 'teeth' as const, plan: { toothError: 0.002 } },
  ])
  const mostRms: Record<number, number> = { 3: 1.5, 4: 2, 5: 3, 6: 4, 8: 8 }
  test.each(cases)('of $cylinders cylinders by $kind $plan', ({ cylinders, kind, plan }) => {
    const one = figures(cylinders, kind, plan, long ? 100 : 4)
    if (long) {
      console.log(
        `${cylinders} cylinders by ${kind} ${JSON.stringify(plan)}: rms ${one.rms.toFixed(2)}, worst ${one.worst.toFixed(2)} points, interval holds ${(100 * one.covered).toFixed(0)} %, weak one found ${one.found} of ${one.of}`,
      )
    }
    const uneven = 'toothError' in plan
    expect(one.rms).toBeLessThan((mostRms[cylinders] ?? 0) * (uneven ? 3 : 1))
    expect(one.found).toBeGreaterThanOrEqual(Math.floor((uneven ? 0.7 : 0.99) * one.of))
    expect(one.covered).toBeGreaterThan(uneven ? 0.9 : 0.6)
  })
})
