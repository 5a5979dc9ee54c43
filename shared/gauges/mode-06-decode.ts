// Service 06 on CAN: supported monitors, and test results with the vehicle's own limits. SAE J1979 / ISO 15031-5 as
// restated in service information (2004 page of the draft text, 2012 page, 2005 summary); the standard was not opened.
import { readPayloads, type Payload } from './mode-06-frames.ts'
import { hexByte, type LineProblem } from './mode-06-lines.ts'
import { scaled, signedOf, isSigned, scalingOf } from './unit-and-scaling.ts'

/** "not run": value and both limits zero, that is not completed since the codes were cleared. */
export type TestState = 'pass' | 'fail' | 'not run'

export type MonitorTest = {
  line: number
  from?: string
  mid: number
  tid: number
  uas: number
  /** As sent: value, least, most; sixteen bits each. */
  raw: readonly [number, number, number]
  value: number
  min: number
  max: number
  unit: string
  state: TestState
  /** The limits span everything that can be sent: they carry no verdict. */
  open: boolean
}

export type Mode06 = {
  tests: MonitorTest[]
  /** Monitors that a support bitmap names, each once, ascending. */
  supported: number[]
  problems: LineProblem[]
}

const recordBytes = 9
const bitmapBytes = 5
const isBitmapMid = (mid: number): boolean => mid % 0x20 === 0

/** Reads whatever was pasted; never throws. Problems come by line. */
export function decodeMode06(text: string): Mode06 {
  const { payloads, problems } = readPayloads(text)
  const tests: MonitorTest[] = []
  const supported = new Set<number>()
  for (const payload of payloads) {
    const reason = refused(payload.bytes)
    if (reason !== null) problems.push({ line: payload.line, reason })
    else if (payload.bytes[0] !== 0x46) continue
    else if (isBitmapMid(payload.bytes[1] ?? 1)) for (const mid of bitmapOf(payload.bytes)) supported.add(mid)
    else tests.push(...recordsOf(payload))
  }
  return {
    tests,
    supported: [...supported].toSorted((a, b) => a - b),
    problems: problems.toSorted((a, b) => a.line - b.line),
  }
}

/** Why a payload is dropped; null when it can be read, and for the tester's own requests. */
function refused(bytes: readonly number[]): string | null {
  const [head = 0, first, refusalCode = 0] = bytes
  if (head === 0x06) return null
  if (head === 0x7f)
    return first === 0x06
      ? `the module refused (${hexByte(refusalCode)}${refusalWords[refusalCode] ?? ''})`
      : 'a module refused another service'
  if (head !== 0x46) return `an answer of another service (${hexByte(head)}), not of 06`
  if (first === undefined || bytes.length === 2) return 'holds no test results'
  const rest = bytes.length - 1
  if (isBitmapMid(first))
    return rest % bitmapBytes === 0 ? null : 'a list of monitors needs four bytes for each 32 monitors'
  if (rest % recordBytes !== 0)
    return `cut short: ${rest} bytes follow 46, where each test takes ${recordBytes}. The format before CAN is not read`
  const mids = bytes.slice(1).filter((_, i) => i % recordBytes === 0)
  return mids.every(mid => mid === first)
    ? null
    : 'several monitors in one answer: bytes are missing or doubled'
}

const refusalWords: Readonly<Record<number, string>> = {
  0x11: ', service not supported',
  0x12: ', not supported',
  0x22: ', conditions not right',
  0x31: ', request out of range',
  0x78: ', answer still to come',
}

/** Most significant bit is the monitor after the bitmap's own number. */
function bitmapOf(bytes: readonly number[]): number[] {
  const mids: number[] = []
  for (let at = 1; at + bitmapBytes <= bytes.length; at += bitmapBytes) {
    const base = bytes[at] ?? 0
    for (let bit = 0; bit < 32; bit++) {
      const byte = bytes[at + 1 + (bit >> 3)] ?? 0
      if ((byte & (0x80 >> (bit & 7))) !== 0) mids.push(base + bit + 1)
    }
  }
  return mids
}

function recordsOf({ line, from, bytes }: Payload): MonitorTest[] {
  const tests: MonitorTest[] = []
  for (let at = 1; at < bytes.length; at += recordBytes) {
    const byte = (i: number) => bytes[at + i] ?? 0
    const word = (i: number) => (byte(i) << 8) | byte(i + 1)
    const raw = [word(3), word(5), word(7)] as const
    tests.push({
      line,
      ...(from === undefined ? {} : { from }),
      ...testOf(byte(0), byte(1), byte(2), raw),
    })
  }
  return tests
}

const testOf = (
  mid: number,
  tid: number,
  uas: number,
  raw: readonly [number, number, number],
): Omit<MonitorTest, 'line' | 'from'> => ({
  mid,
  tid,
  uas,
  raw,
  value: scaled(raw[0], uas),
  min: scaled(raw[1], uas),
  max: scaled(raw[2], uas),
  unit: scalingOf(uas).unit,
  state: stateOf(raw, uas),
  open: isSigned(uas) ? raw[1] === 0x8000 && raw[2] === 0x7fff : raw[1] === 0 && raw[2] === 0xffff,
})

function stateOf(raw: readonly [number, number, number], uas: number): TestState {
  if (raw.every(word => word === 0)) return 'not run'
  const [value, min, max] = [signedOf(raw[0], uas), signedOf(raw[1], uas), signedOf(raw[2], uas)]
  return min <= value && value <= max ? 'pass' : 'fail'
}
