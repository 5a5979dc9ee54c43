import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { reading } from '../gauges/testing/evidence-job.ts'
import { arbitraryReading } from '../job/testing/arbitrary-parts.ts'
import type { ReadingDetails } from '../job/tray-schema.ts'
import {
  type Condition,
  conditions,
  depositKinds,
  depositPlaces,
  electrodeWearLevels,
  insulatorColours,
  insulatorDamageKinds,
} from './condition.ts'
import { depositMeaning } from './deposit-meanings.ts'
import { colourMeanings } from './detail-meanings.ts'
import { meaningsOf } from './reading-meaning.ts'

const said = (condition: Condition | undefined, details: ReadingDetails = {}) =>
  meaningsOf(reading(condition, details))
const states = (condition: Condition | undefined, details: ReadingDetails = {}) =>
  said(condition, details).map(({ state, of }) => `${of} ${state}`)

describe('a condition', () => {
  it.each([
    ['normal', 'sound'],
    ['lean', 'watch'],
    ['rich', 'watch'],
    ['oil-wetted', 'fault'],
    ['carbon', 'fault'],
    ['ash', 'watch'],
    ['overheated', 'fault'],
    ['coolant', 'fault'],
    ['fuel-wet', 'fault'],
    ['worn', 'watch'],
    ['damaged', 'fault'],
  ] as const)('%s is %s', (condition, state) => {
    expect(said(condition).map(one => one.state)).toEqual([state])
  })
  it('always comes with words, a source and, unless sound, a next check', () => {
    for (const condition of conditions) {
      const [meaning] = said(condition)
      expect(meaning?.text.length).toBeGreaterThan(10)
      expect(meaning?.plain.length).toBeGreaterThan(10)
      expect(meaning?.source.length).toBeGreaterThan(5)
      expect(meaning?.next === '').toBe(meaning?.state === 'sound')
    }
  })
})

describe('oil', () => {
  it('on the nose is the cylinder’s', () => {
    expect(states(undefined, { deposits: [{ kind: 'wet oil', place: 'nose' }] })).toEqual(['cylinder fault'])
    expect(states('oil-wetted', { deposits: [{ kind: 'wet oil', place: 'nose' }] })).toEqual([
      'cylinder fault',
    ])
  })
  it.each(['nose', 'one side', 'strap'] as const)('at the firing end (%s) is the cylinder’s', place => {
    expect(depositMeaning('wet oil', place)).toMatchObject({ of: 'cylinder', state: 'fault' })
  })
  it('in the well is the well’s, and watched only', () => {
    expect(states('normal', { oilInWell: true })).toEqual(['cylinder sound', 'well watch'])
    expect(states(undefined, { deposits: [{ kind: 'wet oil', place: 'well' }] })).toEqual(['well watch'])
    expect(states('normal', { oilInWell: true, deposits: [{ kind: 'wet oil', place: 'well' }] })).toEqual([
      'cylinder sound',
      'well watch',
    ])
  })
  it('on the outer body is not the cylinder’s either', () => {
    expect(states('normal', { deposits: [{ kind: 'baked oil', place: 'outer body' }] })).toEqual([
      'cylinder sound',
      'well watch',
    ])
  })
  it('tagged on the nose while noted only outside is asked about, not believed', () => {
    const found = said('oil-wetted', {
      oilInWell: true,
      deposits: [{ kind: 'wet oil', place: 'outer body' }],
    })
    expect(found.every(one => one.of === 'well' && one.state === 'watch')).toBe(true)
    expect(found[0]?.next).toContain('nose')
  })
  it('tagged, with oil in the well beside it, stays a fault of the cylinder', () => {
    expect(states('oil-wetted', { oilInWell: true })).toEqual(['cylinder fault', 'well watch'])
  })
})

it('nothing outside the chamber is ever a fault of the cylinder', () => {
  for (const kind of depositKinds)
    for (const place of ['outer body', 'well'] as const) {
      const { of, state } = depositMeaning(kind, place)
      expect(of).not.toBe('cylinder')
      expect(state).toBe('watch')
    }
})

describe('ambiguous signs stay ambiguous', () => {
  it('rust red: additive or coolant, so ask', () => {
    const [meaning] = said(undefined, { insulatorColour: 'rust red' })
    expect(meaning?.text).toMatch(/additive.*coolant/)
    expect(meaning?.next).toMatch(/fuel.*coolant/)
  })
  it('rust red is asked about on a plug tagged normal too', () => {
    expect(states('normal', { insulatorColour: 'rust red' })).toEqual(['cylinder sound', 'cylinder watch'])
  })
  it.each(['rich', 'carbon'] as const)('%s may be a lean misfire', condition => {
    expect(said(condition)[0]?.text).toMatch(/lean/)
  })
  it('white may be a nearly new plug', () => {
    expect(said(undefined, { insulatorColour: 'chalk white' })[0]?.text).toMatch(/lean, hot, or a nearly new/)
  })
  it('wet without saying with what is asked about', () => {
    expect(states(undefined, { wetness: 'wet' })).toEqual(['cylinder watch'])
    expect(states('normal', { wetness: 'damp' })).toEqual(['cylinder sound', 'cylinder watch'])
  })
})

describe('details beside a condition', () => {
  it('colour gives way to the person’s tag', () => {
    expect(states('normal', { insulatorColour: 'dark brown' })).toEqual(['cylinder sound'])
    expect(states(undefined, { insulatorColour: 'dark brown' })).toEqual(['cylinder watch'])
  })
  it('soot and wetness add nothing to a tag that says them', () => {
    expect(states('carbon', { deposits: [{ kind: 'soot', place: 'nose' }] })).toEqual(['cylinder fault'])
    expect(states('fuel-wet', { wetness: 'wet' })).toEqual(['cylinder fault'])
    expect(states('oil-wetted', { wetness: 'wet' })).toEqual(['cylinder fault'])
  })
  it('damage speaks though the plug burned well', () => {
    expect(states('normal', { insulatorDamage: 'cracked upper' })).toEqual(['cylinder sound', 'plug fault'])
    expect(states('normal', { electrodeWear: 'rounded' })).toEqual(['cylinder sound', 'plug sound'])
    expect(states('normal', { electrodeWear: 'sharp', insulatorDamage: 'none', wetness: 'dry' })).toEqual([
      'cylinder sound',
    ])
  })
  it('a gap alone says nothing without its specification', () => {
    expect(said(undefined, { gap: { value: 1.2, unit: 'mm' } })).toEqual([])
  })
})

it('every colour, wear, damage and deposit has words that name a source', () => {
  const all = [
    ...insulatorColours.map(colour => colourMeanings[colour]),
    ...electrodeWearLevels.flatMap(electrodeWear => said(undefined, { electrodeWear })),
    ...insulatorDamageKinds.flatMap(insulatorDamage => said(undefined, { insulatorDamage })),
    ...depositKinds.flatMap(kind => depositPlaces.map(place => depositMeaning(kind, place))),
  ]
  for (const meaning of all) {
    expect(meaning.text).not.toBe('')
    expect(meaning.plain).not.toBe('')
    expect(meaning.source).not.toBe('')
  }
})

it('says each thing once', () => {
  fc.assert(
    fc.property(arbitraryReading, one => {
      const texts = meaningsOf(one).map(meaning => meaning.text)
      expect(new Set(texts).size).toBe(texts.length)
    }),
  )
})
