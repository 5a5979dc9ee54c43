import { mkdtemp, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import {
  type RecordingMapping,
  recordingResultSchema,
  type RecordingTestKind,
} from '../../../shared/contract/recordings-contract.ts'
import { layoutById } from '../../../shared/engine/layouts.ts'
import { recordingEntrySchema } from '../../../shared/gauges/recording-entry.ts'
import { asCsv } from '../../../shared/recordings/testing/as-csv.ts'
import { crankRecording } from '../../../shared/recordings/testing/crank-recording.ts'
import { starterRecording } from '../../../shared/recordings/testing/starter-recording.ts'
import { FaultError } from '../fault.ts'
import { analyseRecording } from './analyse-recording.ts'

const four = (() => {
  const layout = layoutById('i4-1342')
  if (!layout) throw new Error('no layout')
  return layout
})()

const plain: RecordingMapping = {
  separator: 'comma',
  decimal: 'point',
  firstLine: 2,
  timeColumn: 0,
  timeUnit: 's',
  valueColumn: 1,
  value: 'current',
  scale: 1,
}

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugtray-analyse-'))
})
afterAll(() => rm(folder, { recursive: true, force: true }))

async function analyse(
  text: string,
  mapping: RecordingMapping,
  kind: RecordingTestKind = 'relative compression',
) {
  const path = join(folder, `${Math.random()}.csv`)
  await writeFile(path, text)
  return analyseRecording({ path, name: 'made.csv', layout: four, test: kind, mapping })
}

describe('a recording file', () => {
  const made = starterRecording({ layout: four, percent: { 2: 75 }, noise: 0.05, rate: 5000, sync: 'cycle' })

  test('becomes an entry that can be kept, an envelope and events', async () => {
    const result = await analyse(asCsv(made.recording), { ...plain, syncColumn: 2 })
    const entry = recordingEntrySchema.parse(result.entry)
    expect(entry.source).toMatchObject({
      fileName: 'made.csv',
      samples: 40_000,
      seconds: 8,
      mapping: { syncColumn: 2 },
    })
    expect(entry.values.find(value => value.cylinder === 2)?.percent).toBeCloseTo(75, -0.5)
    expect(result.envelope.unit).toBe('A')
    expect(Math.max(...result.envelope.high.map(level => level ?? 0))).toBeGreaterThan(500)
    expect(result.wrongRows).toBe(0)
  })

  test('gives the same values however it is written', async () => {
    const values = async (text: string, mapping: RecordingMapping) =>
      (await analyse(text, mapping)).entry?.values
    const usual = await values(asCsv(made.recording), { ...plain, syncColumn: 2 })
    const other = asCsv(made.recording, { semicolons: true })
    expect(
      await values(other, { ...plain, separator: 'semicolon', decimal: 'comma', syncColumn: 2 }),
    ).toEqual(usual)
    const untimed = { ...plain, rate: 5000, syncColumn: 2 }
    delete untimed.timeColumn
    const byRate = await values(asCsv(made.recording), untimed)
    for (const [at, value] of (byRate ?? []).entries())
      expect(value.percent).toBeCloseTo(usual?.[at]?.percent ?? 0, 0)
    const turned = asCsv({ ...made.recording, amperes: made.recording.amperes.map(one => -one * 10) })
    const scaled = await values(turned, { ...plain, scale: -0.1, syncColumn: 2 })
    for (const [at, value] of (scaled ?? []).entries())
      expect(value.percent).toBeCloseTo(usual?.[at]?.percent ?? 0, 1)
  })

  test('is read with wrong rows in it, which are counted and listed', async () => {
    const lines = asCsv(made.recording).split('\n')
    lines.splice(100, 0, 'trigger lost', 'a,b,c')
    const result = await analyse(lines.join('\n'), plain)
    expect(result.wrongRows).toBe(2)
    expect(result.firstWrongRows.map(row => row.line)).toEqual([101, 102])
    expect(result.entry?.values).toHaveLength(4)
  })

  test('of crank speed is read by tooth intervals, by tooth times and by speed', async () => {
    const plan = { layout: four, percent: { 4: 70 } }
    const crank = crankRecording(plan)
    const intervals = [...crank.edges]
      .slice(1)
      .map((edge, at) => ((edge - (crank.edges[at] ?? 0)) * 1e6).toFixed(2))
    const wheel = { teeth: 60, missingTeeth: 2 }
    const column = { ...plain, valueColumn: 0, timeUnit: 'us' as const, ...wheel }
    const results = [
      await analyse(
        `interval (us)\n${intervals.join('\n')}\n`,
        { ...column, value: 'tooth interval' },
        'crank speed',
      ),
      await analyse(
        `edge (us)\n${[...crank.edges].map(edge => (edge * 1e6).toFixed(1)).join('\n')}\n`,
        { ...column, value: 'tooth time' },
        'crank speed',
      ),
      await analyse(
        `time,rpm\n${[...crank.time].map((time, at) => `${time.toFixed(4)},${crank.rpm[at]?.toFixed(2)}`).join('\n')}\n`,
        { ...plain, value: 'rpm' },
        'crank speed',
      ),
    ]
    const low = Math.min(...crank.truth.values())
    for (const result of results) {
      const percents = result.entry?.values.map(value => value.percent) ?? []
      expect(percents).toHaveLength(4)
      expect(Math.abs(Math.min(...percents) - low)).toBeLessThan(3)
      expect(result.envelope.unit).toBe('rpm')
    }
  })
})

describe('a file that gives no recording', () => {
  const failure = async (
    text: string,
    mapping: RecordingMapping,
    kind?: RecordingTestKind,
  ): Promise<unknown> => analyse(text, mapping, kind).catch((error: unknown) => error)
  const rows = (count: number, row: (at: number) => string) =>
    Array.from({ length: count }, (_, at) => row(at)).join('\n')

  test.each<[string, string, Partial<RecordingMapping>, RegExp]>([
    ['too few rows', 'a,b\n1,2\n2,x\n3,4\n', {}, /Only 2 rows could be read; line 3: no number in column 2/],
    ['no lines', '1'.repeat(200_000), {}, /longer than 64 KiB/],
    ['a time that stands still', `a,b\n${rows(100, () => '5,1')}`, {}, /does not advance/],
    ['a wrong unit of time', `a,b\n${rows(100, at => `${at * 100},1`)}`, {}, /9,900 seconds long/],
    [
      'no wheel',
      `a,b\n${rows(100, at => `${at},1`)}`,
      { value: 'tooth time' },
      /not what relative compression/,
    ],
  ])('says what is wrong with %s', async (_, text, change, what) => {
    const error = await failure(text, { ...plain, ...change })
    expect(error).toMatchObject({
      code: 'BAD_INPUT',
      fault: { where: 'made.csv', hint: expect.stringMatching(/\S/) },
    })
    expect(String(error)).toMatch(what)
  })

  test('asks for the wheel', async () => {
    const text = `a\n${rows(100, at => String(at))}`
    expect(
      String(await failure(text, { ...plain, valueColumn: 0, value: 'tooth time' }, 'crank speed')),
    ).toMatch(/Choose the wheel/)
  })

  test('is no failure where the current only shows no cranking: the remarks say so', async () => {
    const result = await analyse(`a,b\n${rows(5000, at => `${at / 1000},0`)}`, plain)
    expect(result.entry).toBeUndefined()
    expect(result.remarks.map(remark => remark.code)).toEqual(['no cranking'])
  })

  test('is refused as a link', async () => {
    const path = join(folder, 'link.csv')
    await symlink('/etc/hostname', path)
    const work = analyseRecording({
      path,
      name: 'link.csv',
      layout: four,
      test: 'relative compression',
      mapping: plain,
    })
    await expect(work).rejects.toMatchObject({ code: 'BAD_INPUT' })
  })
})

describe('any file at all', () => {
  const anyMapping = fc.record({
    separator: fc.constantFrom('comma', 'semicolon', 'tab', 'space'),
    decimal: fc.constantFrom('point', 'comma'),
    firstLine: fc.integer({ min: 1, max: 5 }),
    timeColumn: fc.integer({ min: 0, max: 3 }),
    timeUnit: fc.constantFrom('s', 'ms', 'us'),
    valueColumn: fc.integer({ min: 0, max: 3 }),
    syncColumn: fc.integer({ min: 0, max: 3 }),
    scale: fc.constantFrom(1, -1, 0.001),
    teeth: fc.constantFrom(4, 36, 60),
    missingTeeth: fc.integer({ min: 0, max: 3 }),
    value: fc.constantFrom('current', 'rpm', 'tooth interval', 'tooth time'),
  } satisfies Record<string, fc.Arbitrary<unknown>>)
  const kindOf = (mapping: RecordingMapping): RecordingTestKind =>
    mapping.value === 'current' ? 'relative compression' : 'crank speed'
  /** A fault of ours, or a result that the contract lets through: one with numbers that are numbers. */
  const isOrderly = async (text: string, mapping: RecordingMapping) => {
    const result = await analyse(text, mapping, kindOf(mapping)).catch((error: unknown) => error)
    return result instanceof FaultError || recordingResultSchema.safeParse(result).success
  }

  test('of bytes gives a result or a fault, never a crash', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ maxLength: 2000, unit: 'binary' }), anyMapping, async (text, mapping) => {
        expect(await isOrderly(text, mapping)).toBe(true)
      }),
      {
        numRuns: 150,
      },
    )
  })

  test('of numbers gives a result or a fault, never a crash', async () => {
    const number = fc.oneof(
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      fc.constantFrom(0, 1e300, -1e300, 5e-324, 150),
    )
    const rows = fc.array(fc.tuple(number, number, number), { minLength: 50, maxLength: 400 })
    await fc.assert(
      fc.asyncProperty(rows, fc.boolean(), anyMapping, async (table, isTimed, mapping) => {
        const lines = table.map(([a, b, c], at) => [isTimed ? at * 0.004 : a, b, c, a].join(','))
        const orderly = await isOrderly(lines.join('\n'), {
          ...mapping,
          separator: 'comma',
          decimal: 'point',
        })
        expect(orderly).toBe(true)
      }),
      { numRuns: 150 },
    )
  })
})
