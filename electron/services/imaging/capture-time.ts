// The capture time as the camera wrote it: local wall clock, sub-seconds and offset, each only if it is there.
// It never becomes a Date, which would need a time zone that most cameras do not tell.
import reader from 'exifreader'
import type { TakenAt } from '../../../shared/job/tray-schema.ts'

// The package is CommonJS whose names Node cannot see, so that only its default import works everywhere.
// oxlint-disable-next-line import/no-named-as-default-member
const { load } = reader

// Exif 3.0, section 4.6.6 (names of the tags). DateTime is left out: it is the time of the last change, not of capture.
const sources = [
  { time: 'DateTimeOriginal', subSec: 'SubSecTimeOriginal', offset: 'OffsetTimeOriginal' },
  { time: 'DateTimeDigitized', subSec: 'SubSecTimeDigitized', offset: 'OffsetTimeDigitized' },
] as const
const wanted = sources.flatMap(source => [source.time, source.subSec, source.offset])

/** An Exif block cannot be larger inside a JPEG; elsewhere it has no reason to be. */
const maxExifBytes = 1024 * 1024
const header = 'Exif\0\0'

/** "2026:03:02 09:14:05" to "2026-03-02T09:14:05"; null for blanks, zeros and dates that no calendar has. */
export function localTime(written: string): string | null {
  const match = /^(\d{4})[:\-/](\d{2})[:\-/](\d{2})[ T](\d{2}):(\d{2}):(\d{2})/.exec(written.trim())
  if (match === null) return null
  const [, year = '', month = '', day = '', hour = '', minute = '', second = ''] = match
  const daysInMonth = new Date(Date.UTC(Number(year), Number(month), 0)).getUTCDate()
  const inCalendar = Number(year) >= 1900 && Number(month) >= 1 && Number(month) <= 12
  if (!inCalendar || Number(day) < 1 || Number(day) > daysInMonth) return null
  if (Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59) return null
  return `${year}-${month}-${day}T${hour}:${minute}:${second}`
}

const subSeconds = (written: string): string | null => /^(\d{1,9})/.exec(written.trim())?.[1] ?? null

function offsetOf(written: string): string | null {
  if (written.trim() === 'Z') return '+00:00'
  const match = /^([+-])(\d{2}):?(\d{2})$/.exec(written.trim())
  if (match === null || Number(match[2]) > 14 || Number(match[3]) > 59) return null
  return `${match[1]}${match[2]}:${match[3]}`
}

const latin1 = (bytes: Uint8Array): string => new TextDecoder('latin1').decode(bytes)

function tagsOf(block: Uint8Array): Record<string, string> {
  const tiff = latin1(block.subarray(0, 6)) === header ? block.subarray(6) : block
  const tags: Record<string, string> = {}
  let exif: object
  try {
    // Copied, because the reader takes an ArrayBuffer as starting at its first byte.
    exif =
      load(Uint8Array.from(tiff).buffer, { expanded: true, includeTags: { exif: [...wanted] } }).exif ?? {}
  } catch {
    // Garbage in the Exif block says nothing about the picture: it goes in without a capture time.
    return tags
  }
  for (const [name, tag] of Object.entries(exif)) {
    const value: unknown = tag?.value
    // ASCII tags come as a list of one string.
    const text: unknown = Array.isArray(value) ? value[0] : value
    if (typeof text === 'string') tags[name] = text.replaceAll('\0', '')
  }
  return tags
}

/** `block` is the Exif block as the decoder found it (a TIFF structure, with or without its "Exif" header), or a TIFF file. */
export function captureTime(block: Uint8Array): TakenAt | undefined {
  if (block.length > maxExifBytes && latin1(block.subarray(0, 6)) === header) return undefined
  const tags = tagsOf(block)
  for (const source of sources) {
    const local = localTime(tags[source.time] ?? '')
    if (local === null) continue
    const subSec = subSeconds(tags[source.subSec] ?? '')
    const offset = offsetOf(tags[source.offset] ?? '')
    return { local, ...(subSec === null ? {} : { subSec }), ...(offset === null ? {} : { offset }) }
  }
  return undefined
}
