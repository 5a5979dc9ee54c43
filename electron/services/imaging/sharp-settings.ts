// The one place where sharp is set up: which decoders exist at all, and how careful each of them is.
import sharp, { type Sharp, type SharpOptions } from 'sharp'
import { decodeSeconds, maxChannels, maxPixels } from './picture-limits.ts'

// Everything is blocked, then only the loaders of the formats that intake allows are let back in, and only from
// memory: no path, no SVG, no PDF, no script-like format can be reached by a file that merely claims to be a photo.
sharp.block({ operation: ['VipsForeignLoad'] })
sharp.unblock({
  operation: [
    'VipsForeignLoadJpegBuffer',
    'VipsForeignLoadPngBuffer',
    'VipsForeignLoadWebpBuffer',
    'VipsForeignLoadTiffBuffer',
    'VipsForeignLoadHeifBuffer',
  ],
})
// No picture is opened twice, so a cache only holds memory. Pictures run side by side (see semaphore.ts), which
// uses the cores better than several threads inside one picture.
sharp.cache(false)
sharp.concurrency(1)

/** `error` lets decoder warnings pass but still fails on a file that is cut short. */
export type Strictness = 'warning' | 'error'

const careful: SharpOptions = {
  limitInputPixels: maxPixels,
  limitInputChannels: maxChannels,
  unlimited: false,
  sequentialRead: true,
  page: 0,
  pages: 1,
}

/** A photo's bytes, to be decoded: first page only, limits set, stopped after {@link decodeSeconds} seconds. */
export function openPicture(bytes: Uint8Array, strictness: Strictness = 'warning'): Sharp {
  return sharp(bytes, { ...careful, failOn: strictness }).timeout({ seconds: decodeSeconds })
}

/** Only the header: no pixel is decoded, so that a picture over the limit can still be named with its size. */
export function openHeader(bytes: Uint8Array): Sharp {
  return sharp(bytes, { ...careful, failOn: 'error', limitInputPixels: false }).timeout({
    seconds: decodeSeconds,
  })
}

/** Pixels of our own making, three channels of 8 bits or as told. */
export function openPixels(
  data: Uint8Array,
  raw: { width: number; height: number; channels: 1 | 2 | 3 | 4 },
): Sharp {
  return sharp(data, { raw, limitInputPixels: maxPixels }).timeout({ seconds: decodeSeconds })
}
