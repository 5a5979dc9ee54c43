// Makes the two small pictures of a photo, for the tray and for the screen, with one decode: upright sRGB JPEG.
import type { Strictness } from './sharp-settings.ts'
import { openPicture, openPixels } from './sharp-settings.ts'

/** Long edges in pixels; a smaller photo keeps its size. */
export const thumbEdge = 320
export const screenEdge = 1600
/**
 * Colour is what these pictures are read for: no chroma subsampling. Tables made to measure would save about 7 % of the
 * bytes and triple the time.
 */
const encoding = { quality: 85, chromaSubsampling: '4:4:4', optimiseCoding: false }
/** Behind transparent parts: the neutral grey that photos are judged against. */
const surround = { r: 128, g: 128, b: 128 }

export type Sizes = { thumb: Uint8Array; screen: Uint8Array }

const within = (edge: number) =>
  ({ width: edge, height: edge, fit: 'inside', withoutEnlargement: true }) as const

/**
 * The screen picture is decoded with the format's own shrinking where it has one (JPEG halves or quarters while it
 * decodes); the thumb is made from the screen's pixels. Every pixel of the file is read, so damage anywhere is found.
 */
export async function makeSizes(picture: Uint8Array, strictness?: Strictness): Promise<Sizes> {
  const { data, info } = await openPicture(picture, strictness)
    .autoOrient()
    .resize(within(screenEdge))
    .flatten({ background: surround })
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true })
  const pixels = () => openPixels(data, { width: info.width, height: info.height, channels: info.channels })
  const screen = await pixels().jpeg(encoding).toBuffer()
  const thumb = await pixels().resize(within(thumbEdge)).jpeg(encoding).toBuffer()
  return { thumb, screen }
}

const fullQuality = 92

/** Every pixel, upright, sRGB JPEG, for what browsers cannot show. */
export async function makeFull(picture: Uint8Array, strictness?: Strictness): Promise<Uint8Array> {
  return openPicture(picture, strictness)
    .autoOrient()
    .flatten({ background: surround })
    .toColourspace('srgb')
    .jpeg({ quality: fullQuality, chromaSubsampling: '4:4:4' })
    .toBuffer()
}
