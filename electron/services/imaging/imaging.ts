// Everything that is done with a photo's pixels, behind one door that bounds how much runs at once.
import { availableParallelism } from 'node:os'
import type { PhotoFormat } from '../../../shared/job/tray-schema.ts'
import { contentKind } from './content-kind.ts'
import { decodeFailure } from './decode-failure.ts'
import { formats } from './formats.ts'
import { createHeicDecoder } from './heic-decoder.ts'
import { type PictureHeader, pictureHeader } from './picture-header.ts'
import { tiffOfPixels } from './tiff-of-pixels.ts'
import { RefusedPicture } from './refused-picture.ts'
import { createSemaphore } from './semaphore.ts'
import { makeFull, makeSizes, type Sizes } from './sizes.ts'
import { openPicture, type Strictness } from './sharp-settings.ts'

type Cancel = { signal?: AbortSignal | undefined }

export type Imaging = {
  /** How many photos it works on at once. */
  readonly parallel: number
  /** Names the format by content and reads the header. Throws RefusedPicture. */
  header: (bytes: Uint8Array) => Promise<PictureHeader>
  /** Both small pictures, upright sRGB JPEG. Throws RefusedPicture when any part of the file is damaged. */
  sizes: (bytes: Uint8Array, header: PictureHeader, cancel?: Cancel) => Promise<Sizes>
  /** Every pixel as an upright sRGB JPEG, quality 92. */
  full: (bytes: Uint8Array, header: PictureHeader, cancel?: Cancel) => Promise<Uint8Array>
  close: () => Promise<void>
}

/**
 * Some phones write a wrong but harmless field into the scan header of a baseline JPEG; every pixel is there.
 * Such a file is decoded once more with warnings allowed, which still fails where it is cut short.
 */
const harmless = /Invalid SOS parameters for sequential JPEG/

async function decode<T>(format: PhotoFormat, work: (strictness: Strictness) => Promise<T>): Promise<T> {
  try {
    return await work('warning')
  } catch (error) {
    if (!(error instanceof Error) || !harmless.test(error.message))
      throw decodeFailure(error, formats[format].name)
  }
  try {
    return await work('error')
  } catch (error) {
    throw decodeFailure(error, formats[format].name)
  }
}

/** The picture's own code values as a TIFF with a profile that the file itself only names by number. */
async function assignProfile(
  bytes: Uint8Array,
  icc: Uint8Array | undefined,
  strictness: Strictness,
): Promise<Uint8Array> {
  const { data, info } = await openPicture(bytes, strictness)
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true })
  return tiffOfPixels(data, info.width, info.height, icc)
}

/** Refuses what is not a photo, saying what it is. */
function formatOf(bytes: Uint8Array): PhotoFormat {
  const kind = contentKind(bytes)
  if ('format' in kind) return kind.format
  if (kind.other === 'empty')
    throw new RefusedPicture('The file is empty. Copy it from the camera or phone again.')
  throw new RefusedPicture(`This is ${kind.other}. Add photos as JPEG, PNG, WebP, TIFF, AVIF or HEIC.`)
}

export type ImagingOptions = { parallel?: number }

/** Two to four photos at once, by the number of cores; one HEIC at a time. */
export function createImaging(options: ImagingOptions = {}): Imaging {
  const parallel = options.parallel ?? Math.min(Math.max(availableParallelism(), 2), 4)
  const turns = createSemaphore(parallel)
  const heic = createHeicDecoder()

  async function inTurn<T>(
    bytes: Uint8Array,
    header: PictureHeader,
    cancel: Cancel,
    work: (picture: Uint8Array, strictness: Strictness) => Promise<T>,
  ): Promise<T> {
    // HEIC waits for its own decoder first, so that it does not hold a turn meanwhile.
    const isHeic = header.format === 'heic'
    const picture = isHeic ? await heic.toTiff(bytes, header.icc, cancel.signal) : bytes
    const readable = (strictness: Strictness) =>
      header.assignProfile && !isHeic ? assignProfile(picture, header.icc, strictness) : picture
    const run = () => decode(header.format, async strictness => work(await readable(strictness), strictness))
    const result = await turns.run(run, { weight: header.weight, signal: cancel.signal })
    cancel.signal?.throwIfAborted()
    return result
  }

  return {
    parallel,
    header: bytes => pictureHeader(bytes, formatOf(bytes)),
    sizes: (bytes, header, cancel = {}) => inTurn(bytes, header, cancel, makeSizes),
    full: (bytes, header, cancel = {}) => inTurn(bytes, header, cancel, makeFull),
    close: () => heic.close(),
  }
}
