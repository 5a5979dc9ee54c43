import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cylindersOf } from '../engine/relations.ts'
import {
  compression,
  cut,
  inHg,
  jobWith,
  onePullEach,
  reading,
  vacuum,
  voided,
} from '../gauges/testing/evidence-job.ts'
import type { Job } from '../job/job-schema.ts'
import { arbitraryJob } from '../job/testing/arbitrary-job.ts'
import { conditionMap } from './condition-map.ts'
import { severity } from './evidence.ts'

const states = (job: Job) => conditionMap(job, 'as found').map(one => one.state)
const of = (job: Job, cylinder: number) =>
  conditionMap(job, 'as found').find(one => one.cylinder === cylinder)

it('knows nothing of an engine nobody has looked at', () => {
  expect(states(jobWith({}))).toEqual(Array.from({ length: 6 }, () => 'unknown'))
  expect(of(jobWith({}), 1)).toMatchObject({ headline: 'nothing known yet', evidence: [] })
})

it('goes by cylinder number, not by bank', () => {
  const map = conditionMap(jobWith({ layout: 'v6-oddeven-123456' }), 'as found')
  expect(map.map(one => one.cylinder)).toEqual([1, 2, 3, 4, 5, 6])
})

it('takes the worst of what is known', () => {
  const job = jobWith({
    readings: { 1: reading('normal'), 2: reading('normal'), 3: reading('oil-wetted') },
    pulls: onePullEach([150, 110, 150, 131]),
  })
  expect(states(job)).toEqual(['sound', 'fault', 'fault', 'watch', 'unknown', 'unknown'])
  expect(of(job, 2)?.evidence.map(one => one.state)).toEqual(['fault', 'watch', 'sound'])
  expect(of(job, 3)?.headline).toBe('Oil-wetted')
})

it('near a limit a cylinder is watched: neither sound nor at fault', () => {
  const found = of(jobWith({ pulls: onePullEach([150, 130]) }), 2)
  expect(found).toMatchObject({
    state: 'watch',
    headline: 'compression, below highest 20\u00a0\u00b1\u00a03.5\u00a0psi: cannot be called',
  })
})

it('a headline keeps its numbers whole', () => {
  const job = jobWith({ pulls: [compression(1, 150.5), compression(2, 118.5)] })
  expect(of(job, 2)?.headline).toBe('compression, below highest 32\u00a0\u00b1\u00a03.5\u00a0psi: outside')
  expect(of(job, 2)?.evidence[0]?.text).toContain('32\u00a0\u00b1\u00a03.5\u00a0psi')
})

describe('oil in the well', () => {
  it('alone with all else fine is watched and no fault', () => {
    const job = jobWith({
      layout: 'i4-1342',
      readings: { 3: reading('normal', { oilInWell: true }) },
      pulls: [
        ...onePullEach([170, 168, 169, 167]),
        ...[1, 2, 3, 4].map(cylinder => cut(cylinder, [720, 620])),
      ],
    })
    expect(states(job)).toEqual(['sound', 'sound', 'watch', 'sound'])
    const evidence = of(job, 3)?.evidence ?? []
    expect(evidence[0]).toMatchObject({ of: 'well', headline: 'Oil in the plug well' })
    expect(evidence.slice(1).every(one => one.state === 'sound')).toBe(true)
  })
})

describe('voided pulls', () => {
  it('do not count', () => {
    const low = compression(2, 60)
    const pulls = [compression(1, 150), voided(low), compression(2, 149)]
    expect(states(jobWith({ pulls })).slice(0, 2)).toEqual(['sound', 'sound'])
    expect(states(jobWith({ pulls: [compression(1, 150), low] })).slice(0, 2)).toEqual(['sound', 'fault'])
  })
  it('leave a cylinder unknown when nothing else is known', () => {
    expect(states(jobWith({ pulls: [voided(compression(1, 60)), voided(compression(2, 160))] }))[0]).toBe(
      'unknown',
    )
  })
})

it('a lone pull of a cylinder clears nobody', () => {
  expect(states(jobWith({ pulls: [compression(1, 150)] }))[0]).toBe('unknown')
})

it('what is only noted, or speaks of the reading, is no evidence', () => {
  const pulls = [compression(1, 150), compression(1, 145), compression(2, 148), vacuum('idle', 8)]
  const evidence = of(jobWith({ pulls }), 1)?.evidence ?? []
  expect(evidence.map(one => one.headline)).toEqual([
    'compression, below highest 0.5\u00a0\u00b1\u00a03.5\u00a0psi: within',
    'compression, share of highest 99.7\u00a0\u00b1\u00a02.4\u00a0%: within',
  ])
})

it('keeps the stages apart', () => {
  const job = jobWith({
    pulls: [compression(1, 150, { stage: 'after repair' }), compression(2, 60, { stage: 'after repair' })],
  })
  expect(states(job)[1]).toBe('unknown')
  expect(conditionMap(job, 'after repair')[1]?.state).toBe('fault')
})

it('of two trays of one stage the later reading of a plug counts', () => {
  const job = jobWith({ readings: { 1: reading('carbon'), 2: reading('carbon') } })
  const [first] = job.trays
  if (!first) throw new Error('a job has a tray')
  const later = {
    ...first,
    id: 'tray-2',
    createdAt: '2026-03-02T11:00:00Z',
    slots: first.slots.map(slot =>
      slot.cylinder === 1 ? { ...slot, reading: reading('normal') } : { cylinder: slot.cylinder, shots: [] },
    ),
  }
  expect(states({ ...job, trays: [later, first] }).slice(0, 2)).toEqual(['sound', 'fault'])
})

it('with two plugs a cylinder names the plug', () => {
  const job = jobWith({ layout: 'i4-1342-twin' })
  const trays = job.trays.map(tray => ({
    ...tray,
    slots: tray.slots.map(slot =>
      slot.cylinder === 2 ? { ...slot, reading: reading(slot.plug === 'B' ? 'carbon' : 'normal') } : slot,
    ),
  }))
  const found = conditionMap({ ...job, trays }, 'as found')[1]
  expect(found).toMatchObject({ state: 'fault', headline: 'Carbon-fouled' })
  expect(found?.evidence[0]).toMatchObject({ slot: { cylinder: 2, plug: 'B' } })
  expect(found?.evidence[0]?.text).toMatch(/^Plug B: /)
})

it('words its numbers in the units asked for', () => {
  const job = jobWith({ pulls: onePullEach([150, 110]), circumstances: { barometer: inHg(29.5) } })
  const [, second] = conditionMap(job, 'as found', { pressure: 'bar', vacuum: 'kPa' })
  expect(second?.evidence[0]?.text).toContain('2.76\u00a0\u00b1\u00a00.24\u00a0bar')
})

it('holds for any job: the state is the worst of the evidence, which comes worst first', () => {
  fc.assert(
    fc.property(arbitraryJob, job => {
      const map = conditionMap(job, 'as found')
      expect(map.map(one => one.cylinder)).toEqual(cylindersOf(job.layout).toSorted((a, b) => a - b))
      for (const { state, evidence } of map) {
        const found = evidence.map(one => severity[one.state])
        expect(found).toEqual(found.toSorted((a, b) => b - a))
        expect(state).toBe(evidence.length === 0 ? 'unknown' : evidence[0]?.state)
      }
    }),
  )
})
