// What spoils compression readings is found from the pulls and their set-up, and speaks of the reading only.
import { describe, expect, it } from 'vitest'
import type { PullOf } from '../job/pull-schema.ts'
import type { CompressionEntry } from './compression-entry.ts'
import { compressionSpoilers } from './compression-spoilers.ts'
import type { TestConditions } from './conditions-schema.ts'
import { tradeUnits } from './shown.ts'
import { compression, jobWith, psi } from './testing/evidence-job.ts'

type More = Partial<CompressionEntry>

/** One pull a minute, cylinder by cylinder. */
const series = (finals: readonly number[], more: (i: number) => More = () => ({})) =>
  finals.map((final, i): PullOf<'compression'> => {
    const pull = compression((i % 6) + 1, final)
    return {
      ...pull,
      at: `2026-03-02T09:${String(i).padStart(2, '0')}:00Z`,
      entry: { ...pull.entry, final: psi(final), ...more(i) },
    }
  })

const found = (pulls: PullOf<'compression'>[], conditions: TestConditions = {}) =>
  compressionSpoilers(
    { ...jobWith({ pulls }), setUps: [{ test: 'compression', stage: 'as found', conditions }] },
    'as found',
    tradeUnits,
  )
const rules = (...of: Parameters<typeof found>) => found(...of).map(one => one.rule)

describe('the set-up', () => {
  it.each([
    [{ throttle: 'closed' }, 'throttle shut'],
    [{ plugs: 'only the tested one out' }, 'plugs left in'],
    [{ engine: 'cold' }, 'engine cold'],
    [{ disabled: false }, 'ignition or injection live'],
  ] as const)('%j is said', (conditions, rule) => {
    expect(rules(series([150]), conditions)).toEqual([rule])
    expect(rules([], conditions)).toEqual([])
  })
  it('in order says nothing', () => {
    expect(
      rules(series([150, 151]), { throttle: 'open', plugs: 'all out', engine: 'warm', disabled: true }),
    ).toEqual([])
  })
})

it('a gauge that does not hold is named with its cylinder', () => {
  expect(found(series([150, 120], i => ({ held: i === 0 })))).toMatchObject([
    { rule: 'does not hold', cylinder: 2, about: 'reading' },
  ])
})

it('uneven numbers of puffs are said', () => {
  expect(found(series([150, 150], i => ({ puffs: 5 + 3 * i })))[0]?.why).toContain('5 and 8')
})

describe('a fall through the sequence', () => {
  it('of the battery is said, with the cylinders pulled later', () => {
    const verdicts = found(series([150, 151, 149, 150, 151, 150], i => ({ batteryVolts: 11.2 - 0.3 * i })))
    expect(verdicts).toMatchObject([{ rule: 'battery voltage falls', unit: 'V', value: 0.9 }])
    expect(verdicts[0]?.why).toContain('4, 5 and 6')
    expect(verdicts[0]?.why).toContain('1 of 720')
  })
  it('of the pressures is said', () => {
    expect(rules(series([160, 158, 155, 150, 148, 144]))).toEqual(['pressure falls'])
  })
  it('is not seen in one low cylinder, wherever it was pulled', () => {
    for (let low = 0; low < 6; low++)
      expect(rules(series([150, 151, 149, 150, 152, 150].map((one, i) => (i === low ? 90 : one))))).toEqual(
        [],
      )
  })
  it('within what can be read is nothing', () => {
    expect(rules(series([150, 149.8, 149.6, 149.4, 149.2, 149]))).toEqual([])
  })
  it('goes by the time of entry', () => {
    expect(rules(series([160, 158, 155, 150, 148, 144]).toReversed())).toEqual(['pressure falls'])
  })
  it('is not said of an order that comes by chance, however far the halves lie apart', () => {
    expect(rules(series([160, 150, 158, 149, 157, 148]))).toEqual([])
  })
  it('needs a sequence', () => {
    expect(rules(series([160, 150, 140]))).toEqual([])
  })
})
