import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decodeMode06 } from './mode-06-decode.ts'
import { asFrames, asPayload, type Sent } from './testing/mode-06-answer.ts'

const word = fc.integer({ min: 0, max: 0xffff })
/** All tests of one monitor, as an answer holds them; long ones count their frames past F. */
const arbitraryAnswer = fc
  .integer({ min: 1, max: 0xff })
  .filter(mid => mid % 0x20 !== 0)
  .chain(mid =>
    fc.array(
      fc.record({
        mid: fc.constant(mid),
        tid: fc.integer({ min: 1, max: 0xfe }),
        uas: fc.integer({ min: 1, max: 0xfe }),
        raw: fc.tuple(word, word, word),
      }),
      { minLength: 1, maxLength: 30 },
    ),
  )

const sentOf = (text: string): Sent[] =>
  decodeMode06(text).tests.map(({ mid, tid, uas, raw }) => ({ mid, tid, uas, raw }))

describe('reading what was sent', () => {
  it('gives back every test, from frames and from payloads', () => {
    fc.assert(
      fc.property(arbitraryAnswer, fc.constantFrom('', '7E8', '18DAF110', '18 DA F1 10'), (answer, id) => {
        expect(sentOf(asFrames(answer, id).join('\n'))).toEqual(answer)
        expect(sentOf(asPayload(answer))).toEqual(answer)
        expect(decodeMode06(asFrames(answer, id).join('\n')).problems).toEqual([])
      }),
    )
  })
  it('keeps the answers of two modules apart however their frames fall between each other', () => {
    const interleaved = fc.tuple(arbitraryAnswer, arbitraryAnswer).chain(([a, b]) => {
      const [left, right] = [asFrames(a, '7E8'), asFrames(b, '7E9')]
      return fc
        .array(fc.boolean(), { minLength: left.length + right.length, maxLength: left.length + right.length })
        .map(choices => {
          const waiting = { left: [...left], right: [...right] }
          const lines = choices.map(first =>
            first
              ? (waiting.left.shift() ?? waiting.right.shift())
              : (waiting.right.shift() ?? waiting.left.shift()),
          )
          return { a, b, text: lines.join('\n') }
        })
    })
    fc.assert(
      fc.property(interleaved, ({ a, b, text }) => {
        const { tests } = decodeMode06(text)
        const from = (id: string) =>
          tests.filter(one => one.from === id).map(({ mid, tid, uas, raw }) => ({ mid, tid, uas, raw }))
        expect(from('7E8')).toEqual(a)
        expect(from('7E9')).toEqual(b)
      }),
    )
  })
  it('never reads an answer that lost a frame', () => {
    fc.assert(
      fc.property(
        arbitraryAnswer.filter(answer => answer.length > 1),
        fc.nat(),
        (answer, pick) => {
          const frames = asFrames(answer)
          const lost = frames.toSpliced(pick % frames.length, 1)
          const read = decodeMode06(lost.join('\n'))
          expect(read.tests).toEqual([])
          expect(read.problems.length).toBeGreaterThan(0)
        },
      ),
    )
  })
  it('reads any text at all without failing', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 400 }),
      fc.stringMatching(/^[0-9A-F \n]{0,400}$/),
    )
    fc.assert(
      fc.property(text, pasted => {
        const { problems } = decodeMode06(pasted)
        const lines = pasted.split(/\r\n|\r|\n/).length
        for (const { line } of problems) expect(line >= 1 && line <= lines).toBe(true)
      }),
    )
  })
})

describe('lines that cannot be used', () => {
  const reasons = (text: string) =>
    decodeMode06(text).problems.map(({ line, reason }) => `${line}: ${reason}`)
  it.each([
    ['Searching...', '"Searching..." is not hexadecimal'],
    ['7E8 1', 'half a byte'],
    ['06 46 A0 FF', 'a single frame of 6 bytes'],
    ['00 00 00', 'a single frame of 0 bytes'],
    ['10 13 46', 'first frame that is too short'],
    ['21 00 00 FF FF A4 0C 24', 'did not begin'],
    ['10 13 46 A4 0B 24 00 25', 'incomplete: 6 of 19 bytes came'],
    ['88 00', 'no frame begins with 88'],
    ['06 41 00 BE 3F A8 13 00', 'another service (41)'],
    ['03 7F 06 31 00 00 00 00', 'the module refused (31, request out of range)'],
    ['46 A2', 'holds no test results'],
    ['46 A0 FF', 'four bytes'],
    ['46 A2 0B 24 00 00 00 00', 'cut short'],
    ['46 A2 0B 24 00 00 00 00 FF FF A3 0C 24 00 00 00 00 FF FF', 'several monitors in one answer'],
    ['12 34 56 78 9A BC DE F0 12', 'neither a CAN frame nor an answer'],
  ])('%s', (text, reason) => {
    expect(reasons(text)).toHaveLength(1)
    expect(reasons(text)[0]).toContain(`1: `)
    expect(reasons(text)[0]).toContain(reason)
  })
  it('come by line, and do not spoil what stands beside them', () => {
    const read = decodeMode06(
      ['reading the module', '', '06 46 A0 FF 80 00 00 00', 'done', '46 A2 0B 24 00 25 00 00 FF FF'].join(
        '\n',
      ),
    )
    expect(read.problems.map(one => one.line)).toEqual([1, 4])
    expect(read.supported).toHaveLength(9)
    expect(read.tests).toMatchObject([{ mid: 0xa2, value: 37 }])
  })
  it("are not the tester's own requests and flow control", () => {
    const text = [
      '7DF 02 06 A4 00 00 00 00 00',
      '7E8 8 10 13 46 A4 0B 24 00 25',
      '7E0 30 00 00',
      '7E8 [8] 21 00 00 FF FF A4 0C 24',
      '7E8 8 22 00 70 00 00 FF FF 00',
      '06 A4',
    ]
    const read = decodeMode06(text.join('\n'))
    expect(read.problems).toEqual([])
    expect(read.tests.map(one => one.value)).toEqual([37, 112])
  })
  it('shows an unknown unit as it came and still holds it against its limits', () => {
    const [test] = decodeMode06('46 A2 80 77 00 05 00 00 00 04').tests
    expect(test).toMatchObject({ value: 5, unit: 'raw', state: 'fail' })
  })
})
