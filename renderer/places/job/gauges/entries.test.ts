// The forms against the schemas of the job: every test has an entry, every choice the schema knows can be chosen, and what
// a person types becomes a pull that the schema takes.
import { describe, expect, it } from 'vitest'
import type { UnitChoice } from '../../../../shared/contract/settings-schema.ts'
import { cutMethods } from '../../../../shared/gauges/balance-entry.ts'
import { clickKinds, fuelStates, trimStates } from '../../../../shared/gauges/fuel-entries.ts'
import { resistanceParts, sparkKinds, trackPlaces } from '../../../../shared/gauges/ignition-entries.ts'
import { escapePaths } from '../../../../shared/gauges/leak-down-entry.ts'
import { observationKinds } from '../../../../shared/gauges/observation-entry.ts'
import { codeStates, misfireOccasions } from '../../../../shared/gauges/scan-entries.ts'
import { swapParts, swapResults, swapWatched } from '../../../../shared/gauges/swap-entry.ts'
import { needleBehaviours, vacuumPhases, vacuumTrends } from '../../../../shared/gauges/vacuum-entry.ts'
import { pullSchema, type TestKind, testKinds } from '../../../../shared/job/pull-schema.ts'
import { cylinderTests } from './cylinder-tests/cylinder-tests.ts'
import { engineTests } from './engine-tests/engine-tests.ts'
import type { Field, Typed } from './entry/field.ts'
import { observationGroups } from './observation-words.ts'
import { pullWords } from './pull-words.ts'
import { testGroups } from './test-groups.ts'

const units: UnitChoice = {
  pressure: 'psi',
  vacuum: 'inHg',
  length: 'mm',
  temperature: '°C',
  altitude: 'ft',
  distance: 'km',
}
const base = { id: 'pull-1', stage: 'as found' as const, at: '2026-03-02T09:00:00Z', instrument: 'gauge-1' }

const ofCylinder = (test: TestKind) => {
  const define = cylinderTests[test]
  if (!define) throw new Error(`${test} is not entered by cylinder`)
  return define(units)
}
const ofEngine = (test: TestKind) => {
  const define = engineTests[test]
  if (!define) throw new Error(`${test} is not entered in a form`)
  return define(units)
}

it('has a place in the chooser for every test, once', () => {
  const shown = testGroups.flatMap(group => group.tests)
  expect(shown.toSorted()).toEqual([...testKinds].toSorted())
})

it('has an entry for every test', () => {
  const others: TestKind[] = ['observation', 'relative compression', 'crank speed']
  const entered = [...Object.keys(cylinderTests), ...Object.keys(engineTests), ...others]
  expect(entered.toSorted()).toEqual([...testKinds].toSorted())
})

it('asks for every observation once', () => {
  const asked = observationGroups.flatMap(group => group.kinds)
  expect(asked.toSorted()).toEqual([...observationKinds].toSorted())
})

const optionsOf = (fields: readonly Field[], name: string): readonly string[] => {
  const field = fields.find(one => one.name === name)
  if (field?.kind !== 'choice' && field?.kind !== 'several') throw new Error(`${name} is no choice`)
  return field.options
}

describe('choices', () => {
  const cylinderFields = (test: TestKind) => {
    const { settings, columns, initial } = ofCylinder(test)
    return [...settings, ...columns(initial)]
  }
  const engineFields = (test: TestKind, typed: Typed = {}) => ofEngine(test).fields(typed)
  it.each<[string, readonly string[], readonly string[]]>([
    ['cut', optionsOf(cylinderFields('balance'), 'cut'), cutMethods],
    ['escapes', optionsOf(cylinderFields('leak-down'), 'escapes'), escapePaths],
    ['spark', optionsOf(cylinderFields('spark'), 'spark'), sparkKinds],
    ['tracks', optionsOf(cylinderFields('spark'), 'tracks'), trackPlaces],
    ['part measured', optionsOf(cylinderFields('resistance'), 'part'), resistanceParts],
    ['click', optionsOf(cylinderFields('injector'), 'click'), clickKinds],
    ['during', optionsOf(cylinderFields('misfire counts'), 'during'), misfireOccasions],
    ['phase', optionsOf(engineFields('vacuum'), 'phase'), vacuumPhases],
    ['needle', optionsOf(engineFields('vacuum'), 'needle'), needleBehaviours],
    ['trend', optionsOf(engineFields('vacuum', { phase: '2500 rpm' }), 'trend'), vacuumTrends],
    ['fuel state', optionsOf(engineFields('fuel pressure'), 'state'), fuelStates],
    ['trim state', optionsOf(engineFields('trims'), 'state'), trimStates],
    ['code state', optionsOf(engineFields('trouble codes'), 'state'), codeStates],
    ['part swapped', optionsOf(engineFields('swap'), 'part'), swapParts],
    ['result', optionsOf(engineFields('swap'), 'result'), swapResults],
    ['watched', optionsOf(engineFields('swap'), 'watched'), swapWatched],
  ])('of %s are those of the schema', (_, offered, known) => expect(offered).toEqual(known))
})

const rows: readonly [TestKind, Typed, Typed, string][] = [
  ['compression', { first: '118', final: '150', held: 'fell back' }, {}, '118 → 150\u00a0psi, fell back'],
  ['compression', { final: '158', oil: '15' }, { wet: 'wet' }, '158\u00a0psi wet'],
  ['running compression', { idle: '55', snap: '90' }, {}, 'idle 55\u00a0psi, snap 90\u00a0psi'],
  [
    'leak-down',
    { percent: '12', escapes: '2,5', towards: '4' },
    {},
    '12\u00a0% lost, exhaust, next plug hole, from 4',
  ],
  ['leak-down', { held: '72' }, { form: 'supply and held', supply: '80' }, '72\u00a0psi of 80\u00a0psi'],
  [
    'balance',
    { before: '700', after: '610', restored: '695' },
    { cut: 'injector' },
    '700 → 610 → 695\u00a0rpm',
  ],
  ['spark', { spark: 'weak', tracks: 'boot' }, { gap: '8' }, 'weak, runs off at boot, gap 8.00\u00a0mm'],
  ['resistance', { ohms: '4.7k', length: '600' }, { part: 'lead' }, 'lead 4700\u00a0Ω, 600.00\u00a0mm'],
  [
    'resistance',
    { open: 'open' },
    { part: 'coil primary', minimum: '0.5', maximum: '2' },
    'coil primary open',
  ],
  ['injector balance', { before: '45', after: '38' }, {}, '45 → 38\u00a0psi'],
  ['injector', { click: 'clear', pulse: 'seen', ohms: '12' }, {}, 'click clear, pulse, 12\u00a0Ω'],
  ['misfire counts', { count: '37' }, { during: 'this drive' }, '37, this drive'],
]

describe('a typed row', () => {
  it.each(rows)('of %s becomes a pull: %j %j', (test, row, settings, words) => {
    const define = ofCylinder(test)
    const pull = define.pull(row, { ...base, cylinder: 3 }, { ...define.initial, ...settings }, {})
    expect(pullSchema.parse(pull)).toEqual(pull)
    expect(pullWords(pullSchema.parse(pull), units)).toBe(words)
  })

  it.each(Object.keys(cylinderTests))('of %s is no pull while it is empty', test => {
    const define = ofCylinder(pullTest(test))
    expect(define.pull({}, { ...base, cylinder: 3 }, define.initial, {})).toBeNull()
  })

  it('carries the state of the engine into a leak-down', () => {
    const pull = ofCylinder('leak-down').pull(
      { percent: '9' },
      { ...base, cylinder: 1 },
      { form: 'percent lost' },
      { engine: 'cold' },
    )
    expect(pull).toMatchObject({ entry: { engine: 'cold' } })
  })

  it('says what is missing above the grid', () => {
    const pull = ofCylinder('leak-down').pull(
      { held: '72' },
      { ...base, cylinder: 1 },
      { form: 'supply and held' },
      {},
    )
    expect(pull).toContain('supply pressure')
  })
})

const pullTest = (test: string): TestKind => {
  const kind = testKinds.find(one => one === test)
  if (!kind) throw new Error(test)
  return kind
}

const forms: readonly [TestKind, Typed, string][] = [
  [
    'vacuum',
    { phase: 'idle', reading: '16', low: '18', high: '13', needle: 'regular drop' },
    'idle 16.0\u00a0inHg, 13.0\u00a0inHg to 18.0\u00a0inHg, regular drop',
  ],
  [
    'vacuum',
    { phase: 'snap', reading: '1', rebound: '23', settled: '18' },
    'snap 1.0\u00a0inHg, rebound 23.0\u00a0inHg, settled 18.0\u00a0inHg',
  ],
  [
    'fuel pressure',
    { state: 'after stopping', pressure: '40', minutes: '10' },
    'after stopping 40\u00a0psi, after 10\u00a0min',
  ],
  [
    'trims',
    { bank: '2', state: 'idle', short: '12', long: '-3', loop: 'closed' },
    'bank 2 idle, short +12\u00a0%, long \u22123\u00a0%',
  ],
  ['trouble codes', { found: 'codes', codes: 'p0302 P0171', state: 'stored' }, 'P0302 stored, P0171 stored'],
  ['trouble codes', { found: 'no codes found' }, 'no codes'],
  ['mode 06', { hex: '46 A2 0B 24 00 01 00 00 00 05\n' }, '1 line, 46 A2 0B 24 00 01 00 00…'],
  [
    'swap',
    { part: 'other', named: 'boot', from: '5', result: 'gone' },
    'boot, 5 with a known good one: gone',
  ],
]

describe('a filled form', () => {
  it.each(forms)('of %s becomes a pull: %j', (test, typed, words) => {
    const pull = ofEngine(test).pull(typed, base)
    expect(pullSchema.parse(pull)).toEqual(pull)
    expect(pullWords(pullSchema.parse(pull), units)).toBe(words)
  })

  it('refuses half a swing and a swap with itself, in words', () => {
    expect(ofEngine('vacuum').pull({ phase: 'idle', reading: '16', low: '13' }, base)).toContain('both ends')
    expect(ofEngine('swap').pull({ part: 'coil', from: '5', to: '5', result: 'stayed' }, base)).toContain(
      'same cylinder',
    )
  })
})
