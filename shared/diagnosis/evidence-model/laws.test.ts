import * as fc from 'fast-check'
import { expect, it, vi } from 'vitest'
import { compression, cut, jobWith, onePullEach, reading, vacuum } from '../../gauges/testing/evidence-job.ts'
import type { Job } from '../../job/job-schema.ts'
import { conditions } from '../../plug/condition.ts'
import { allMarginals, joint } from '../../inference/posterior.ts'
import { cylinderCauses, neighbourGasket } from './causes.ts'
import { diagnose } from './diagnose.ts'
import { valueOrThrow } from './known-good.ts'

const logOdds = (chance: number) => Math.log(chance) - Math.log1p(-chance)
// Whole diagnoses, several a run: slow on a busy machine, whatever the law.
vi.setConfig({ testTimeout: 60_000 })

const few = { numRuns: 12 }
const psi = fc.integer({ min: 20, max: 190 })
const four = fc.array(psi, { minLength: 4, maxLength: 4 })
const readings = fc.array(fc.constantFrom(...conditions), { minLength: 4, maxLength: 4 })
const layout = 'i4-1342'

const jobOf = (finals: readonly number[], plugs: readonly (typeof conditions)[number][] = []): Job =>
  jobWith({
    layout,
    pulls: [...onePullEach(finals), ...finals.map((_, i) => cut(i + 1, [800, 800 - 20 * (i + 1)]))],
    readings: Object.fromEntries(plugs.map((one, i) => [i + 1, reading(one)])),
  })

it('no evidence gives the prior', () => {
  const { cylinders, engine } = diagnose(jobWith({ layout }), 'as found')
  for (const one of [...cylinders.flatMap(each => each.causes), ...engine.causes]) {
    expect(one.probability).toBe(one.before)
    expect(one.evidence).toEqual([])
  }
  const fouled = cylinders[0]?.causes.find(one => one.cause === 'plug fouled')
  expect(fouled?.before).toBeCloseTo(cylinderCauses['plug fouled'].prior, 3)
})

it('the weights add up from the log-odds before to the log-odds shown, and nothing is 0 or 1', () => {
  fc.assert(
    fc.property(four, readings, fc.integer({ min: 2, max: 21 }), (finals, plugs, inHg) => {
      const job = jobOf(finals, plugs)
      const { cylinders, engine } = diagnose(
        { ...job, pulls: [...job.pulls, vacuum('idle', inHg)] },
        'as found',
      )
      for (const one of [...cylinders.flatMap(each => each.causes), ...engine.causes]) {
        expect(one.probability).toBeGreaterThan(0)
        expect(one.probability).toBeLessThan(1)
        const sum = one.evidence.reduce((all, each) => all + each.weight, 0)
        expect(logOdds(one.before) + sum).toBeCloseTo(logOdds(one.probability), 6)
      }
    }),
    few,
  )
})

it('turning the engine round permutes the answer and changes nothing else', () => {
  fc.assert(
    fc.property(four, readings, (finals, plugs) => {
      const turned = (cylinder: number) => 5 - cylinder
      const job = jobOf(finals, plugs)
      const other: Job = {
        ...job,
        layout: {
          ...job.layout,
          banks: job.layout.banks.map(bank => ({ ...bank, cylinders: bank.cylinders.map(turned) })),
          firingOrder: job.layout.firingOrder.map(turned),
        },
        pulls: job.pulls.map(pull =>
          'cylinder' in pull ? { ...pull, cylinder: turned(pull.cylinder) } : pull,
        ),
        trays: job.trays.map(tray => ({
          ...tray,
          slots: tray.slots.map(slot => ({ ...slot, cylinder: turned(slot.cylinder) })),
        })),
      }
      const [one, two] = [diagnose(job, 'as found'), diagnose(other, 'as found')]
      for (const { cylinder, causes } of one.cylinders) {
        const same = two.cylinders.find(each => each.cylinder === turned(cylinder))?.causes ?? []
        for (const cause of causes.filter(each => each.cause !== neighbourGasket))
          expect(same.find(each => each.cause === cause.cause)?.probability).toBeCloseTo(cause.probability, 9)
        const gaskets = (all: typeof causes) =>
          all
            .filter(each => each.cause === neighbourGasket)
            .map(each => each.probability)
            .toSorted((a, b) => a - b)
        for (const [at, chance] of gaskets(causes).entries()) expect(gaskets(same)[at]).toBeCloseTo(chance, 9)
      }
    }),
    few,
  )
})

/** Chance that anything mechanical is wrong with a cylinder, the gaskets beside it among them. */
function mechanical(job: Job, cylinder: number): number {
  const { posterior, faultsOf } = diagnose(job, 'as found')
  const names = posterior.compiled.network.variables.map(one => one.name)
  const webs = names.filter(name => name.startsWith('web') && name.split(/[ -]/).includes(String(cylinder)))
  const variable = `cylinder ${cylinder}`
  const chances = valueOrThrow(joint(posterior, [...webs, variable]))
  const states = chances.length / 2 ** webs.length
  // Webs that are sound come first.
  const sound = Array.from({ length: states }, (_, state) => state).filter(state =>
    faultsOf(variable, state).every(({ cause }) => !mechanicalCauses.has(cause)),
  )
  return 1 - sound.reduce((sum, state) => sum + (chances[state] ?? 0), 0)
}

const mechanicalCauses: ReadonlySet<string> = new Set(
  Object.entries(cylinderCauses).flatMap(([cause, { kind }]) => (kind === 'mechanical' ? [cause] : [])),
)

it('losing more compression never lowers the chance that something mechanical is wrong', () => {
  fc.assert(
    fc.property(
      four,
      fc.integer({ min: 1, max: 4 }),
      fc.integer({ min: 1, max: 60 }),
      (finals, cylinder, loss) => {
        // No neighbour is low, so that no gasket between them takes the blame over.
        const others = finals.map(() => 150)
        const from = finals[cylinder - 1] ?? 150
        const withOne = (value: number) =>
          onePullEach(others.map((one, i) => (i === cylinder - 1 ? value : one)))
        const before = mechanical(jobWith({ layout, pulls: withOne(from) }), cylinder)
        const later = mechanical(jobWith({ layout, pulls: withOne(Math.max(0, from - loss)) }), cylinder)
        expect(later).toBeGreaterThanOrEqual(before - 1e-6)
      },
    ),
    { numRuns: 12 },
  )
})

it('one piece of evidence moves the odds of nothing by more than a hundred', () => {
  const jobs = [
    jobWith({ layout, pulls: onePullEach([150, 150, 150, 2]) }),
    jobWith({ layout, readings: { 2: reading('coolant') } }),
    jobWith({ layout, pulls: [vacuum('idle', 3)] }),
  ]
  const [compressionOnly, plug, idle] = jobs.map(job => diagnose(job, 'as found'))
  const ratio = (one: { probability: number; before: number }) =>
    Math.exp(Math.abs(logOdds(one.probability) - logOdds(one.before)))
  for (const one of plug?.cylinders[1]?.causes ?? []) expect(ratio(one)).toBeLessThanOrEqual(100 + 1e-6)
  for (const one of compressionOnly?.cylinders[3]?.causes ?? [])
    expect(ratio(one)).toBeLessThanOrEqual(100 + 1e-6)
  for (const one of idle?.engine.causes ?? []) expect(ratio(one)).toBeLessThanOrEqual(100 + 1e-6)
})

it('chances of every variable sum to 1', () => {
  const { posterior } = diagnose(jobOf([150, 100, 150, 150], ['lean', 'rich', 'coolant', 'worn']), 'as found')
  for (const [, chances] of valueOrThrow(allMarginals(posterior)))
    expect([...chances].reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9)
})

it('a reading close to a limit says less than one far beyond it', () => {
  const weight = (value: number) =>
    diagnose(
      jobWith({ layout, pulls: [compression(1, value), ...onePullEach([150, 150, 150, 150]).slice(1)] }),
      'as found',
    ).cylinders[0]?.causes.find(one => one.cause === 'exhaust valve')?.evidence[0]?.weight ?? 0
  expect(weight(60)).toBeGreaterThan(weight(128))
  expect(weight(128)).toBeGreaterThan(weight(150))
})
