// The patterns across the engine that the trade reads first, each as evidence, and what has to come out on top. Rows after the
// sources named beside them; a row with several causes names an honest tie.
import { expect, it } from 'vitest'
import {
  compression,
  cut,
  inHg,
  jobWith,
  onePullEach,
  psi,
  reading,
} from '../../gauges/testing/evidence-job.ts'
import type { ObservationEntry } from '../../gauges/observation-entry.ts'
import type { Job } from '../../job/job-schema.ts'
import type { Pull, PullOf } from '../../job/pull-schema.ts'
import type { Condition } from '../../plug/condition.ts'
import { diagnose } from './diagnose.ts'

let ids = 0
const common = () => ({ id: `made-${++ids}`, stage: 'as found' as const, at: '2026-03-02T09:00:00Z' })
const trims = (state: 'idle' | '2500 rpm', longTerm: number): Pull => ({
  ...common(),
  test: 'trims',
  entry: { bank: 1, state, longTerm, closedLoop: true },
})
const misfires = (counts: readonly number[]): Pull[] =>
  counts.map((count, i) => ({ ...common(), test: 'misfire counts', cylinder: i + 1, entry: { count } }))
const noticed = (seen: ObservationEntry['seen']): Pull => ({
  ...common(),
  test: 'observation',
  entry: { seen, answer: 'yes' },
})
const leak = (
  cylinder: number,
  percent: number,
  escapes: ('intake' | 'exhaust' | 'oil filler')[] = [],
): Pull => ({
  ...common(),
  test: 'leak-down',
  cylinder,
  entry: { form: 'percent', percent, escapes },
})
const spark = (cylinder: number, kind: 'strong' | 'weak' | 'none'): Pull => ({
  ...common(),
  test: 'spark',
  cylinder,
  entry: { spark: kind },
})
const all = (condition: Condition, count = 4) =>
  Object.fromEntries(Array.from({ length: count }, (_, i) => [i + 1, reading(condition)]))

const layout = 'i4-1342'
/** The likeliest causes of one cylinder or of the engine, those within a factor of two of the first. */
function first(job: Job, cylinder?: number): string[] {
  const found = diagnose(job, 'as found')
  const causes = cylinder
    ? (found.cylinders.find(one => one.cylinder === cylinder)?.causes ?? [])
    : found.engine.causes
  const best = causes[0]?.probability ?? 0
  return causes.filter(one => one.probability > best / 2).map(one => one.cause)
}
const four = (pulls: Pull[], readings = {}) => jobWith({ layout, pulls, readings })

it('one cylinder low, others fine: exhaust valve before rings (study pages)', () => {
  const job = four(onePullEach([150, 150, 85, 150]))
  const found = first(job, 3)
  expect(found[0]).toBe('exhaust valve')
  expect(found).toContain('rings or bore')
})

it('low, and oil helps: rings; oil does not help: a valve (US Army TM 5-4210-230-14&P-1, GM, Ford)', () => {
  const wet = (third: number) =>
    four([
      ...onePullEach([150, 150, 85, 150]),
      compression(1, 160, { wet: true }),
      compression(3, third, { wet: true }),
    ])
  expect(first(wet(125), 3)).toEqual(['rings or bore'])
  expect(first(wet(91), 3)[0]).toBe('exhaust valve')
  expect(first(wet(91), 3)).not.toContain('rings or bore')
})

it('two neighbours low: the gasket between them (US Army TM 5-4210-230-14&P-1, GM, Ford, Mazda)', () => {
  const job = four(onePullEach([150, 88, 90, 150]))
  expect(first(job, 2)).toEqual(['head gasket to neighbour'])
  expect(first(job, 3)).toEqual(['head gasket to neighbour'])
})

it('two low that are not neighbours are no gasket', () => {
  expect(first(four(onePullEach([88, 150, 90, 150])), 1)).not.toContain('head gasket to neighbour')
})

it('where the air goes names the leak (Dodge 2002, Mazda 2008)', () => {
  const low = onePullEach([150, 150, 85, 150])
  expect(first(four([...low, leak(3, 60, ['exhaust'])]), 3)).toEqual(['exhaust valve'])
  expect(first(four([...low, leak(3, 60, ['intake'])]), 3)).toEqual(['intake valve'])
  expect(first(four([...low, leak(3, 60, ['oil filler'])]), 3)).toEqual(['rings or bore'])
})

it('low with little leak: the valves do not open enough (study pages)', () => {
  expect(first(four([...onePullEach([150, 150, 105, 150]), leak(3, 8)]), 3)[0]).toBe('valve lift lost')
})

it('all low, even: cam timing, or what spoils the test (US Army OD1001, study pages)', () => {
  const found = first(four(onePullEach([88, 90, 89, 90])))
  const expected = ['cam timing', 'worn evenly', 'weak battery', 'throttle shut', 'leaking gauge']
  expect(found.every(one => expected.includes(one))).toBe(true)
  expect(found).toEqual(expect.arrayContaining(['worn evenly', 'weak battery', 'throttle shut']))
})

it('all lean: fuel delivery, an intake leak common to all, the meter (articles, common practice)', () => {
  const found = first(four([], all('lean')))
  expect(found).toEqual(expect.arrayContaining(['low fuel delivery', 'plenum air leak']))
})

it('all lean and trims: positive at idle only is air; positive at both is fuel (trim articles)', () => {
  expect(first(four([trims('idle', 18), trims('2500 rpm', 2)], all('lean')))).toEqual(['plenum air leak'])
  expect(first(four([trims('idle', 16), trims('2500 rpm', 22)], all('lean')))[0]).toBe('low fuel delivery')
})

it('all rich: pressure and metering tie, before cold running; negative trims agree (US Army TM 10-3930-653-14&P)', () => {
  const found = first(four([], all('rich')))
  expect(found).toEqual(expect.arrayContaining(['high fuel pressure', 'metered too much fuel']))
  const negative = first(four([trims('idle', -18), trims('2500 rpm', -17)], all('rich')))
  expect(negative).not.toContain('thermostat or short trips')
  expect(negative).toContain('high fuel pressure')
})

it('all sooty and dry: cold running before fuel pressure (plug charts)', () => {
  expect(first(four([], all('carbon')))[0]).toBe('thermostat or short trips')
})

it('one plug pale: an air leak at its runner, or its injector (articles)', () => {
  const found = first(
    four([], { 1: reading('lean'), 2: reading('normal'), 3: reading('normal'), 4: reading('normal') }),
    1,
  )
  expect(new Set(found)).toEqual(new Set(['runner air leak', 'injector restricted']))
})

it('companions both weak: what they share (common practice)', () => {
  const found = first(four([spark(1, 'weak'), spark(4, 'weak'), spark(2, 'strong'), spark(3, 'strong')]))
  expect(found[0]).toBe('shared coil')
})

it('firing-order neighbours both weak: crossfire (US Army TM 5-4210-230-14&P-1)', () => {
  const found = first(four([...misfires([40, 0, 44, 0])]))
  expect(found[0]).toBe('crossfire')
})

it('one plug wet with coolant and its neighbour low: a gasket (common practice)', () => {
  const job = four(onePullEach([150, 150, 95, 150]), { 2: reading('coolant'), 3: reading('normal') })
  const found = first(job, 2)
  expect(found).toContain('head gasket to neighbour')
  expect(
    found.every(one =>
      ['head gasket to coolant', 'head gasket to neighbour', 'coolant ingress'].includes(one),
    ),
  ).toBe(true)
})

it('oil ash on all: the breather, or an engine worn evenly (Dodge 1998)', () => {
  const found = first(four([], all('ash')))
  expect(new Set(found)).toEqual(new Set(['oil carry-over', 'worn evenly']))
})

it('oil in one well only: the tube seal (common practice)', () => {
  expect(first(four([], { 2: reading('normal', { oilInWell: true }) }), 2)).toEqual(['plug-well seal'])
})

it('good compression, dead, a strong spark elsewhere and none here: coil or lead (common practice)', () => {
  const cuts = [1, 2, 4].map(one => cut(one, [800, 720]))
  const job = four([...onePullEach([150, 150, 150, 150]), ...cuts, cut(3, [800, 799]), spark(3, 'none')])
  const found = first(job, 3)
  expect(found[0]).toBe('coil or driver')
})

it('the fault went with the coil: the coil (common practice)', () => {
  const swap: Pull = {
    ...common(),
    test: 'swap',
    entry: { part: 'coil', from: 3, to: 1, result: 'followed the part' },
  }
  expect(first(four([...misfires([0, 0, 80, 1]), swap]), 3)).toEqual(['coil or driver'])
})

it('weak under load and at speed, vacuum that falls away: the exhaust (US Army OD1001, TM 10-3930-618-20)', () => {
  const held: Pull = {
    ...common(),
    test: 'vacuum',
    entry: { phase: '2500 rpm', reading: inHg(9), trend: 'falls toward zero' },
  }
  expect(first(four([held, noticed('fault under load')]))).toEqual(['exhaust restriction'])
})

it('low rail pressure against the specification: fuel delivery (common practice)', () => {
  const pressure: Pull = { ...common(), test: 'fuel pressure', entry: { state: 'load', pressure: psi(30) } }
  const job = jobWith({
    layout,
    pulls: [pressure],
    circumstances: { specification: { fuelPressureMinimum: psi(50), fuelPressureMaximum: psi(60) } },
  })
  expect(first(job)).toEqual(['low fuel delivery'])
})

it('rust red with a metallic fuel additive says nothing (Dodge 1998)', () => {
  const red = { 2: reading(undefined, { insulatorColour: 'rust red' }) }
  const chance = (job: Job) =>
    diagnose(job, 'as found').cylinders[1]?.causes.find(one => one.cause === 'coolant ingress')
      ?.probability ?? 0
  const before = chance(four([]))
  expect(chance(four([], red))).toBeGreaterThan(before)
  expect(chance(four([noticed('fuel with metallic additive')], red))).toBeCloseTo(before, 12)
})

it('a shut throttle noted explains low compression on all', () => {
  const job: Job = {
    ...four(onePullEach([88, 90, 89, 90])),
    setUps: [{ test: 'compression', stage: 'as found', conditions: { throttle: 'closed' } }],
  }
  expect(first(job)).toEqual(['throttle shut'])
})

it('a code names the cylinder, and counts of the same monitor are not counted twice', () => {
  const codes: Pull = { ...common(), test: 'trouble codes', entry: { codes: [{ code: 'P0303' }] } }
  const fault = (job: Job, cylinder: number) =>
    diagnose(job, 'as found').cylinders[cylinder - 1]?.causes.find(one => one.cause === 'coil or driver')
  const coded = fault(four([codes]), 3)
  expect(coded?.probability).toBeGreaterThan(2 * (coded?.before ?? 1))
  expect(fault(four([codes]), 2)?.probability).toBeCloseTo(fault(four([]), 2)?.before ?? 0, 3)
  const counts = misfires([0, 0, 60, 0])
  expect(fault(four([...counts, codes]), 3)?.probability).toBeCloseTo(
    fault(four(counts), 3)?.probability ?? 0,
    12,
  )
})

it('starter current with a sync signal speaks of compression; without one it names no cylinder', () => {
  const current = (synced: boolean): Pull => ({
    ...common(),
    test: 'relative compression',
    entry: {
      source: {
        fileName: 'invented.csv',
        recording: 'a'.repeat(64),
        seconds: 5,
        samples: 5000,
        mapping: {},
        method: 'peaks',
      },
      synced,
      values: [100, 98, 60, 99].map((percent, i) => ({
        position: i + 1,
        ...(synced ? { cylinder: i + 1 } : {}),
        percent,
      })),
      remarks: [],
    },
  })
  expect(first(four([current(true)]), 3)[0]).toBe('exhaust valve')
  expect(diagnose(four([current(false)]), 'as found').cylinders[2]?.causes[0]?.evidence).toEqual([])
})

it('oil past the rings and a misfire elsewhere: two faults at once are both on top', () => {
  const job = four([...onePullEach([150, 150, 150, 150]), spark(1, 'none'), ...misfires([90, 0, 0, 1])], {
    1: reading('fuel-wet'),
    3: reading('oil-wetted'),
  })
  expect(first(job, 1)[0]).toBe('coil or driver')
  expect(['oil past rings', 'oil past guides']).toContain(first(job, 3)[0])
})

it('a healthy engine, tested, stays sound', () => {
  const job = four(
    [...onePullEach([150, 148, 152, 149]), ...[1, 2, 3, 4].map(one => cut(one, [800, 725]))],
    all('normal'),
  )
  const { cylinders, engine } = diagnose(job, 'as found')
  const highest = [...cylinders.flatMap(one => one.causes), ...engine.causes].map(one => one.probability)
  expect(Math.max(...highest)).toBeLessThan(0.02)
})

it('an ohmmeter: an open lead is the lead; a coil outside its range is the coil; little insulation is a fouled plug', () => {
  const ohms = (entry: PullOf<'resistance'>['entry']): Pull => ({
    ...common(),
    test: 'resistance',
    cylinder: 3,
    entry,
  })
  const missing = misfires([0, 0, 60, 0])
  expect(first(four([...missing, ohms({ part: 'lead', open: true })]), 3)).toEqual(['lead or boot'])
  const specified = { minimum: 5000, maximum: 9000 }
  expect(first(four([...missing, ohms({ part: 'coil secondary', ohms: 21_000, specified })]), 3)[0]).toBe(
    'coil or driver',
  )
  expect(first(four([...missing, ohms({ part: 'plug insulation', ohms: 4e5 })]), 3)[0]).toBe('plug fouled')
  // Off the scale is good insulation, and a coil without a range to hold it against says nothing.
  const coil = (pulls: Pull[]) =>
    diagnose(four(pulls), 'as found').cylinders[2]?.causes.find(one => one.cause === 'coil or driver')
      ?.probability
  expect(coil([ohms({ part: 'coil primary', ohms: 0.7 })])).toBe(coil([]))
  expect(first(four([...missing, ohms({ part: 'plug insulation', open: true })]), 3)).not.toContain(
    'plug fouled',
  )
})
