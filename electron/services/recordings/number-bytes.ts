// Reads numbers straight from the bytes of a line, without making a string of each: a recording has millions of them.

/** What a field held besides a number. */
export const absent = Number.NaN
/** Not a number and not a known word for a missing sample. */
export const wrong = Number.POSITIVE_INFINITY

const [zero, nine, plus, minus, space, tab, quote] = [48, 57, 43, 45, 32, 9, 34]
const powers = Float64Array.from({ length: 309 }, (_, power) => 10 ** power)
const exact = 2 ** 53

const isBlank = (byte: number | undefined) => byte === space || byte === tab || byte === quote || byte === 13

/** Words by which devices say that a sample is missing or out of range. */
const missingWords = new Set([
  '',
  '-',
  '--',
  'nan',
  'null',
  'na',
  'n/a',
  'inf',
  '+inf',
  '-inf',
  'infinity',
  '-infinity',
  'ol',
  '∞',
  '-∞',
  '+∞',
])

/**
 * The number in `bytes` from `from` up to `to`; `absent` for an empty field or a word for a missing sample, `wrong` for
 * anything else. Right to the last or last but one binary digit.
 */
export function numberIn(bytes: Uint8Array, from: number, to: number, decimal: number): number {
  let at = from
  let end = to
  while (at < end && isBlank(bytes[at])) at += 1
  while (end > at && isBlank(bytes[end - 1])) end -= 1
  if (at === end) return absent
  const start = at
  let byte = bytes[at] ?? 0
  const negative = byte === minus
  if (negative || byte === plus) at += 1
  let value = 0
  let digits = 0
  let shift = 0
  for (; at < end; at += 1) {
    byte = bytes[at] ?? 0
    if (byte < zero || byte > nine) break
    digits += 1
    if (value < exact) value = value * 10 + (byte - zero)
    else shift += 1
  }
  if (at < end && byte === decimal) {
    for (at += 1; at < end; at += 1) {
      byte = bytes[at] ?? 0
      if (byte < zero || byte > nine) break
      digits += 1
      if (value >= exact) continue
      value = value * 10 + (byte - zero)
      shift -= 1
    }
  }
  if (digits === 0) return wordIn(bytes, start, end)
  if (at < end) {
    // e or E
    if ((byte | 32) !== 101) return wrong
    at += 1
    byte = bytes[at] ?? 0
    const down = byte === minus
    if (down || byte === plus) at += 1
    if (at >= end) return wrong
    let power = 0
    for (; at < end; at += 1) {
      byte = bytes[at] ?? 0
      if (byte < zero || byte > nine) return wrong
      power = Math.min(400, power * 10 + (byte - zero))
    }
    shift += down ? -power : power
  }
  if (shift !== 0) value = scaled(value, shift)
  return negative ? -value : value
}

function scaled(value: number, shift: number): number {
  if (shift > 0) return shift > 308 ? (value === 0 ? 0 : wrong) : value * (powers[shift] ?? 1)
  if (shift < -308) return 0
  return value / (powers[-shift] ?? 1)
}

const text = new TextDecoder()

function wordIn(bytes: Uint8Array, from: number, to: number): number {
  if (to - from > 12) return wrong
  return missingWords.has(text.decode(bytes.subarray(from, to)).toLowerCase()) ? absent : wrong
}

export type FieldReader = {
  /** The number of the field that begins at `from`; sets `end` to where the field ends (its separator, or `to`). */
  read: (bytes: Uint8Array, from: number, to: number) => number
  end: number
}

/**
 * Reads fields in one pass where they are plain decimals, as nearly all are; anything else is read by `numberIn`, with
 * the same result.
 */
export function fieldReader(separator: number, decimal: number): FieldReader {
  const reader: FieldReader = {
    end: 0,
    read(bytes, from, to) {
      let at = from
      const negative = bytes[at] === minus
      if (negative) at += 1
      let value = 0
      let digits = 0
      let byte = 0
      for (; at < to; at += 1) {
        byte = bytes[at] ?? 0
        if (byte < zero || byte > nine) break
        value = value * 10 + (byte - zero)
        digits += 1
      }
      let shift = 0
      if (at < to && byte === decimal) {
        const point = at
        for (at += 1; at < to; at += 1) {
          byte = bytes[at] ?? 0
          if (byte < zero || byte > nine) break
          value = value * 10 + (byte - zero)
        }
        shift = at - point - 1
        digits += shift
      }
      // 15 digits are exact; more are left to the careful reader.
      if (digits > 0 && digits <= 15 && (at === to || byte === separator)) {
        reader.end = at
        const scaledDown = shift === 0 ? value : value / (powers[shift] ?? 1)
        return negative ? -scaledDown : scaledDown
      }
      while (at < to && bytes[at] !== separator) at += 1
      reader.end = at
      return numberIn(bytes, from, at, decimal)
    },
  }
  return reader
}
