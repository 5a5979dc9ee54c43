// Service 06 answers against decoded examples, two of them real captures; sources in data/mode06.json.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { nextAverage } from '../../shared/gauges/misfire-average.ts'
import { misfireCodes } from '../../shared/gauges/trouble-code-words.ts'
import { decodeMode06 } from '../../shared/gauges/mode-06-decode.ts'
import { misfireCylinder } from '../../shared/gauges/mode-06-monitors.ts'
import { hexByte } from '../../shared/gauges/mode-06-lines.ts'
import { isSigned, scaled, scalingOf } from '../../shared/gauges/unit-and-scaling.ts'
import { published } from './published.ts'

const decodedTest = z.object({
  mid: z.string(),
  tid: z.string(),
  uas: z.string(),
  raw: z.array(z.number()),
  value: z.number(),
  min: z.number(),
  max: z.number(),
  unit: z.string(),
  state: z.enum(['pass', 'fail', 'not completed since clear']),
  limit_is_open: z.boolean(),
})

const data = published(
  'mode06',
  z.object({
    misfire_mids: z.record(z.string(), z.string()),
    uas: z.array(
      z.object({
        id: z.string(),
        unit: z.string(),
        per_bit: z.number(),
        offset: z.number(),
        signed: z.boolean(),
      }),
    ),
    dtc: z.record(z.string(), z.string()),
    ewma_sequence: z.array(z.object({ current: z.number(), ewma: z.number() })),
    examples: z.array(
      z.object({
        name: z.string(),
        payload_hex: z.string(),
        frames_hex: z.array(z.string()),
        decoded: z.union([
          z.object({ supported_mids: z.array(z.string()) }),
          z.object({ tests: z.array(decodedTest) }),
        ]),
      }),
    ),
    must_reject: z.array(
      z.object({
        payload_hex: z.string().optional(),
        frames_hex: z.array(z.string()).optional(),
        why: z.string(),
      }),
    ),
  }),
)

const unitShown = (unit: string) => (unit === 'degC' ? '°C' : unit)

/** What we read, written as the examples write it. */
function asPublished(text: string) {
  const { tests, supported, problems } = decodeMode06(text)
  return {
    problems,
    supported: supported.map(hexByte),
    tests: tests.map(one => ({
      mid: hexByte(one.mid),
      tid: hexByte(one.tid),
      uas: hexByte(one.uas),
      raw: [...one.raw],
      value: one.value,
      min: one.min,
      max: one.max,
      unit: one.unit,
      state: one.state === 'not run' ? ('not completed since clear' as const) : one.state,
      limit_is_open: one.open,
    })),
  }
}

describe.each(data.examples.map(one => [one.name, one] as const))('%s', (_name, example) => {
  const frames = example.frames_hex
  it.each([
    ['payload', example.payload_hex],
    ['payload without spaces', example.payload_hex.replaceAll(' ', '')],
    ['frames', frames.join('\n')],
    ['frames with an 11-bit id', frames.map(frame => `7E8 ${frame}`).join('\n')],
    [
      'frames with an 11-bit id, no spaces',
      frames.map(frame => `7E8${frame.replaceAll(' ', '')}`).join('\n'),
    ],
    ['frames with a 29-bit id', frames.map(frame => `18 DA F1 10 ${frame}`).join('\r\n')],
    ['two modules in turn', frames.flatMap(frame => [`7E8 ${frame}`, `7EA ${frame}`]).join('\n')],
  ])('from %s', (form, text) => {
    const expected =
      'tests' in example.decoded
        ? {
            problems: [],
            supported: [],
            tests: example.decoded.tests.map(one => ({ ...one, unit: unitShown(one.unit) })),
          }
        : { problems: [], supported: example.decoded.supported_mids, tests: [] }
    const read = asPublished(text)
    expect(read).toEqual(
      form === 'two modules in turn'
        ? { ...expected, tests: [...expected.tests, ...expected.tests] }
        : expected,
    )
  })
})

describe.each(data.must_reject.map(one => [one.why, one] as const))('rejected: %s', (_why, example) => {
  it('reads nothing and says so', () => {
    const read = decodeMode06(example.payload_hex ?? (example.frames_hex ?? []).join('\n'))
    expect(read.tests).toEqual([])
    expect(read.supported).toEqual([])
    expect(read.problems.length).toBeGreaterThan(0)
  })
})

it.each(data.uas.map(row => [row.id, row] as const))('scaling %s', (_id, row) => {
  const id = Number.parseInt(row.id, 16)
  expect(isSigned(id)).toBe(row.signed)
  expect(scalingOf(id)).toMatchObject({ unit: unitShown(row.unit), perBit: row.per_bit, offset: row.offset })
  expect(scaled(1000, id)).toBeCloseTo(1000 * row.per_bit + row.offset, 6)
})

it('monitors name the cylinders as published', () => {
  const named = Object.entries(data.misfire_mids).flatMap(([mid, words]) => {
    const cylinder = /cylinder (\d+)/.exec(words)?.[1]
    return cylinder === undefined ? [] : [[mid, Number(cylinder)] as const]
  })
  expect(named).toHaveLength(12)
  for (const [mid, cylinder] of named) expect(misfireCylinder(Number.parseInt(mid, 16))).toBe(cylinder)
  expect(misfireCylinder(0xa1)).toBeNull()
})

it('the average over ten driving cycles runs as published', () => {
  let average = 0
  for (const { current, ewma } of data.ewma_sequence) {
    average = nextAverage(average, current)
    expect(average).toBeCloseTo(ewma, 5)
  }
})

it('trouble codes P0300 to P0312 name the cylinders as published', () => {
  const codes = Object.entries(data.dtc).filter(([code]) => code !== 'note')
  expect(codes).toHaveLength(13)
  for (const [code, words] of codes) {
    const cylinder = /cylinder (\d+)/.exec(words)?.[1]
    expect(misfireCodes[code]).toEqual(
      cylinder === undefined ? { cylinder: null } : { cylinder: Number(cylinder) },
    )
  }
})
