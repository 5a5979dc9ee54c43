// Reading a job back, and where each kind of fault is said to be.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonicalJson } from './canonical.ts'
import { parseJob } from './parse-job.ts'
import { arbitraryJob } from './testing/arbitrary-job.ts'
import { exampleJob, fourInLine, shotNamed, valueOf } from './testing/example-job.ts'

const job = exampleJob()
/** The job as JSON text, one piece replaced. */
const altered = (find: string, replacement: string): unknown => {
  const text = JSON.stringify(job)
  if (!text.includes(find)) throw new Error(`No ${find} in the example.`)
  return JSON.parse(text.replace(find, replacement))
}
const refusalOf = (raw: unknown) => {
  const outcome = parseJob(raw)
  return outcome.ok ? null : outcome.refusal
}

describe('reading a job', () => {
  it('gives back any job that was written, value for value', () => {
    fc.assert(
      fc.property(arbitraryJob, written => {
        const read = valueOf(parseJob(JSON.parse(JSON.stringify(written))))
        expect(read).toEqual(written)
        expect(canonicalJson(read)).toBe(canonicalJson(written))
        expect(valueOf(parseJob(JSON.parse(canonicalJson(written))))).toEqual(written)
      }),
      { numRuns: 60 },
    )
  })

  it('names the path of a wrong value', () => {
    expect(refusalOf(altered('"value":148', '"value":"148"'))).toEqual({
      what: 'At pulls.0.entry.final.value: expected number, received string.',
      where: 'pulls.0.entry.final.value',
      hint: 'Correct this, then try again. List places count from 0.',
    })
  })

  it.each([
    ['"complaint"', '"complain":1,"complaint"', 'complain', /unknown field/],
    ['"entry":{', '"entry":{"wett":true,', 'pulls.0.entry.wett', /unknown field/],
    ['"test":"compression"', '"test":"whistling"', 'pulls.0.test', /compression/],
    ['"plugsPerCylinder":1', '"plugsPerCylinder":3', 'layout.plugsPerCylinder', /1, 2/],
    ['"condition":"oil-wetted"', '"condition":"oily"', 'trays.0.slots.1.reading.condition', /normal/],
    ['"createdAt":"2026-03-02T09:00:00Z"', '"createdAt":"yesterday"', 'createdAt', /ISO/],
    ['"complaint":"Shakes at idle",', '', 'complaint', /expected string/],
    ['"shots":["s1","s4"]', '"shots":["s1","s9"]', 'writeUp.shots.1', /no tray has a shot s9/],
    ['"id":"s2"', '"id":"s1"', 'trays.0.slots.0.shots.1.id', /used already, at trays.0.slots.0.shots.0.id/],
    ['"cylinder":3,"entry"', '"cylinder":7,"entry"', 'pulls.0.cylinder', /no cylinder 7/],
    ['{"cylinder":4,"shots":[]}', '{"cylinder":5,"shots":[]}', 'trays.0.slots.3', /no cylinder 5/],
    [',{"cylinder":4,"shots":[]}', '', 'trays.0.slots', /slot of cylinder 4 is missing/],
    ['{"cylinder":4,"shots":[]}', '{"cylinder":3,"shots":[]}', 'trays.0.slots', /cylinder 4 is missing/],
  ])('refuses %s -> %s, at %s', (find, replacement, where, message) => {
    const refusal = refusalOf(altered(find, replacement))
    expect(refusal?.where).toBe(where)
    expect(refusal?.what).toMatch(message)
    expect(refusal?.what.startsWith(`At ${where}: `)).toBe(true)
  })

  it('says how many more faults there are', () => {
    const raw = { ...job, extra: 1, another: 2 }
    expect(refusalOf(raw)?.hint).toBe('Correct this and 1 more, then try again. List places count from 0.')
  })

  it('refuses __proto__ keys, other documents and newer ones', () => {
    expect(refusalOf(altered('"engine":{', '"engine":{"__proto__":{},'))?.where).toBe('engine.__proto__')
    expect(refusalOf(null)?.what).toBe('This is not a job document.')
    expect(refusalOf([])?.what).toBe('This is not a job document.')
    expect(refusalOf(altered('"schemaVersion":2', '"schemaVersion":3'))?.what).toMatch(
      /newer version of Plugtray/,
    )
    expect(refusalOf(altered('"schemaVersion":2,', ''))?.where).toBe('schemaVersion')
  })

  it('refuses a layout that contradicts itself', () => {
    expect(refusalOf({ ...job, layout: { ...fourInLine, firingOrder: [1, 3, 3, 2] } })?.where).toMatch(
      /^layout\./,
    )
  })

  it('refuses ids of trays and pulls that come twice, and one shot on two trays', () => {
    const [tray] = job.trays
    const again = { ...tray, slots: [1, 2, 3, 4].map(cylinder => ({ cylinder, shots: [] })), unsorted: [] }
    expect(refusalOf({ ...job, trays: [tray, again] })?.where).toBe('trays.1.id')
    expect(refusalOf({ ...job, pulls: [...job.pulls, ...job.pulls] })?.where).toBe('pulls.1.id')
    const second = { ...again, id: 't2', unsorted: [shotNamed('s3')] }
    expect(refusalOf({ ...job, trays: [tray, second] })?.where).toBe('trays.1.unsorted.0.id')
    expect(refusalOf({ ...job, writeUp: { shots: ['s1', 's1'] } })?.where).toBe('writeUp.shots.1')
  })

  it('answers with a refusal, never an error, for any JSON', () => {
    fc.assert(
      fc.property(fc.jsonValue(), raw => {
        expect(parseJob(raw).ok).toBe(false)
        expect(parseJob({ ...job, extra: raw }).ok).toBe(false)
        parseJob({ ...job, layout: raw })
        parseJob({ ...job, trays: raw })
      }),
    )
  })
})
