import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { takenAtSchema } from '../../../shared/job/tray-schema.ts'
import { picture } from '../../../tests/fixtures/images/pictures.ts'
import { captureTime, localTime } from './capture-time.ts'
import { openHeader } from './sharp-settings.ts'

async function exifOf(tags: Record<string, string>): Promise<Buffer> {
  const { exif } = await openHeader(await picture(1).withExif({ IFD2: tags }).jpeg().toBuffer()).metadata()
  if (exif === undefined) throw new Error('no Exif block')
  return exif
}

describe('the capture time', () => {
  it.each([
    [{ DateTimeOriginal: '2026:03:02 09:14:05' }, { local: '2026-03-02T09:14:05' }],
    [
      { DateTimeOriginal: '2026:03:02 09:14:05', SubSecTimeOriginal: '007', OffsetTimeOriginal: '-05:00' },
      { local: '2026-03-02T09:14:05', subSec: '007', offset: '-05:00' },
    ],
    [
      { DateTimeOriginal: '2026:03:02 09:14:05', OffsetTimeOriginal: 'Z' },
      { local: '2026-03-02T09:14:05', offset: '+00:00' },
    ],
    [
      { DateTimeOriginal: '2026:03:02 09:14:05', SubSecTimeOriginal: 'abc' },
      { local: '2026-03-02T09:14:05' },
    ],
    [
      { DateTimeOriginal: '2026:03:02 09:14:05', OffsetTimeOriginal: '+99:00' },
      { local: '2026-03-02T09:14:05' },
    ],
    // A camera whose clock was never set, and one that leaves blanks.
    [{ DateTimeOriginal: '0000:00:00 00:00:00' }, undefined],
    [{ DateTimeOriginal: '    :  :     :  :  ' }, undefined],
    [{ DateTimeOriginal: 'yesterday' }, undefined],
    // The other source is taken when the first is unusable, with its own sub-seconds.
    [
      {
        DateTimeOriginal: '2026:02:30 09:00:00',
        DateTimeDigitized: '2026:03:01 08:00:00',
        SubSecTimeDigitized: '5',
      },
      { local: '2026-03-01T08:00:00', subSec: '5' },
    ],
  ])('of %j is %j', async (tags, expected) => {
    expect(captureTime(await exifOf(tags))).toEqual(expected)
  })

  it('leaves out the time of the last change', async () => {
    const bytes = await picture(1)
      .withExif({ IFD0: { DateTime: '2026:03:02 09:14:05' } })
      .jpeg()
      .toBuffer()
    expect(captureTime((await openHeader(bytes).metadata()).exif ?? new Uint8Array())).toBeUndefined()
  })

  it('of any garbage is none or a valid one, and never throws', async () => {
    const block = await exifOf({ DateTimeOriginal: '2026:03:02 09:14:05', SubSecTimeOriginal: '1' })
    const arbitrary = fc.check(
      fc.property(fc.uint8Array({ maxLength: 400 }), bytes => captureTime(bytes) === undefined),
    )
    expect(arbitrary.failed).toBe(false)
    const garbledOnes = fc.check(
      fc.property(fc.array(fc.tuple(fc.nat(block.length - 1), fc.nat(255)), { maxLength: 40 }), changes => {
        const garbled = Uint8Array.from(block)
        for (const [at, value] of changes) garbled[at] = value
        const found = captureTime(garbled)
        return found === undefined || takenAtSchema.safeParse(found).success
      }),
      { numRuns: 2000 },
    )
    expect(garbledOnes.failed).toBe(false)
  })

  it('knows the calendar', () => {
    expect(localTime('2024:02:29 00:00:00')).toBe('2024-02-29T00:00:00')
    expect(localTime('2023:02:29 00:00:00')).toBeNull()
    expect(localTime('2026:04:31 00:00:00')).toBeNull()
    expect(localTime('2026:13:01 00:00:00')).toBeNull()
    expect(localTime('2026:01:01 24:00:00')).toBeNull()
    expect(localTime('2026:01:01 23:60:00')).toBeNull()
    expect(localTime('2026-01-01T23:59:59')).toBe('2026-01-01T23:59:59')
  })
})
