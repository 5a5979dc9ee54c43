// Puts pasted CAN frames together to whole answers by ISO 15765-2: single, first and consecutive frames, or bare payloads.
import { hexByte, type LineProblem, type PastedLine, readLines } from './mode-06-lines.ts'

export type Payload = {
  /** Where it began. */
  line: number
  from?: string
  bytes: readonly number[]
}

type Open = { line: number; length: number; bytes: number[]; next: number }

/** A payload begins with the service's answer (46), a refusal (7F) or a request of the tester (06). */
const answer = 0x46
const refusal = 0x7f
const request = 0x06
const frameBytes = 8

/** All whole payloads in the order they ended, and every line that could not be used, with why. */
export function readPayloads(text: string): { payloads: Payload[]; problems: LineProblem[] } {
  const { lines, problems } = readLines(text)
  const payloads: Payload[] = []
  const open = new Map<string, Open>()

  const whole = ({ line, from }: PastedLine, bytes: readonly number[]) => {
    payloads.push({ line, ...(from === undefined ? {} : { from }), bytes })
  }
  const drop = (from: string) => {
    const left = open.get(from)
    open.delete(from)
    if (left)
      problems.push({
        line: left.line,
        reason: `incomplete: ${left.bytes.length} of ${left.length} bytes came`,
      })
  }

  for (const one of lines) {
    const { line, bytes } = one
    const from = one.from ?? ''
    const [head = 0, second = 0] = bytes
    const kind = head >> 4
    if (head === answer || head === refusal) whole(one, bytes)
    else if (head === request && bytes.length === 2) continue
    else if (bytes.length > frameBytes)
      problems.push({
        line,
        reason: `${bytes.length} bytes beginning ${hexByte(head)}: neither a CAN frame nor an answer of service 06`,
      })
    else if (kind === 0) {
      if (head === 0 || head > 7 || bytes.length <= head)
        problems.push({
          line,
          reason: `a single frame of ${head} bytes, but ${bytes.length - 1} stand behind its length`,
        })
      else whole(one, bytes.slice(1, head + 1))
    } else if (kind === 1) {
      drop(from)
      const length = ((head & 0x0f) << 8) | second
      if (length < frameBytes || bytes.length < frameBytes)
        problems.push({ line, reason: 'a first frame that is too short, or says that it is' })
      else open.set(from, { line, length, bytes: bytes.slice(2), next: 1 })
    } else if (kind === 2) {
      const begun = open.get(from)
      if (!begun) {
        problems.push({ line, reason: 'continues an answer that did not begin, or was dropped' })
        continue
      }
      const number = head & 0x0f
      if (number !== begun.next) {
        problems.push({
          line,
          reason: `out of order: frame ${hexByte(0x20 | begun.next)} had to follow, this is ${hexByte(head)}`,
        })
        drop(from)
        continue
      }
      begun.bytes.push(...bytes.slice(1))
      begun.next = (number + 1) & 0x0f
      if (begun.bytes.length >= begun.length) {
        open.delete(from)
        whole({ ...one, line: begun.line }, begun.bytes.slice(0, begun.length))
      } else if (bytes.length < frameBytes) {
        problems.push({ line, reason: 'a frame cut short in the middle of an answer' })
        drop(from)
      }
    } else if (kind !== 3) problems.push({ line, reason: `no frame begins with ${hexByte(head)}` })
  }
  for (const from of open.keys()) drop(from)
  return { payloads, problems }
}
