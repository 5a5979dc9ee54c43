// Tells HEIC and AVIF pictures from videos and other files that share their box structure (ISO/IEC 14496-12: `ftyp`
// holds a major brand and a list of compatible brands; ISO/IEC 23008-12 and the AV1 image format name the brands).
import type { ContentKind } from './file-signatures.ts'

const heicBrands = new Set(['heic', 'heix', 'hevc', 'hevx', 'heim', 'heis', 'hevm', 'hevs'])
const avifBrands = new Set(['avif', 'avis'])
const otherBrands: Readonly<Record<string, string>> = {
  'crx ': 'a camera raw file',
  jpeg: 'a HEIF picture that holds JPEG',
  j2ki: 'a HEIF picture that holds JPEG 2000',
  vvic: 'a HEIF picture that holds VVC',
}

const fourLetters = (bytes: Uint8Array, at: number): string =>
  String.fromCharCode(...bytes.subarray(at, at + 4))

/** Major brand first. `mif1` and `msf1` only say "a HEIF picture": the other brands then name the codec. */
function brandsOf(bytes: Uint8Array): string[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const end = Math.min(bytes.length >= 4 ? view.getUint32(0) : 0, bytes.length, 8 + 4 * 64)
  const brands = [fourLetters(bytes, 8)]
  for (let at = 16; at + 4 <= end; at += 4) brands.push(fourLetters(bytes, at))
  return brands
}

export function kindOfIsoMedia(bytes: Uint8Array): ContentKind {
  const brands = brandsOf(bytes)
  for (const brand of brands) {
    if (avifBrands.has(brand)) return { format: 'avif' }
    if (heicBrands.has(brand)) return { format: 'heic' }
    const other = otherBrands[brand]
    if (other !== undefined) return { other }
  }
  if (brands[0] === 'mif1' || brands[0] === 'msf1') return { format: 'heic' }
  return { other: 'a video' }
}
