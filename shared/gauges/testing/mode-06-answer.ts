// Writes answers of service 06 as a vehicle would send them, for tests of the reading.

export type Sent = { mid: number; tid: number; uas: number; raw: readonly [number, number, number] }

const hex = (bytes: readonly number[]): string =>
  bytes.map(byte => byte.toString(16).toUpperCase().padStart(2, '0')).join(' ')

const payloadOf = (tests: readonly Sent[]): number[] => [
  0x46,
  ...tests.flatMap(({ mid, tid, uas, raw }) => [
    mid,
    tid,
    uas,
    ...raw.flatMap(word => [word >> 8, word & 0xff]),
  ]),
]

export const asPayload = (tests: readonly Sent[]): string => hex(payloadOf(tests))

/** First and consecutive frames, the last one filled up to eight bytes. */
export function asFrames(tests: readonly Sent[], id = ''): string[] {
  const payload = payloadOf(tests)
  const frames = [[0x10 | (payload.length >> 8), payload.length & 0xff, ...payload.slice(0, 6)]]
  for (let at = 6, number = 1; at < payload.length; at += 7, number = (number + 1) & 0x0f)
    frames.push([0x20 | number, ...payload.slice(at, at + 7)])
  return frames.map(frame => {
    const full = [...frame, ...Array.from({ length: 8 - frame.length }, () => 0xaa)]
    return id === '' ? hex(full) : `${id} ${hex(full)}`
  })
}
