// Every format that goes in, cut off at several places: an interrupted copy from a card or phone.
import { readFile } from 'node:fs/promises'
import { tiffOfPixels } from '../../electron/services/imaging/tiff-of-pixels.ts'
import { picture } from '../fixtures/images/pictures.ts'
import { type BadFile, refused } from './bad-files-case.ts'

const size = { width: 400, height: 300 }
const line =
  /^This (JPEG|PNG|WebP|TIFF|AVIF|HEIC) is (cut short|damaged).*Copy it from the camera or phone again\.$/

export async function cutShort(): Promise<BadFile[]> {
  const pixels = await picture(3, size).ensureAlpha().raw().toBuffer()
  const whole: readonly [string, Uint8Array][] = [
    ['JPEG', await picture(3, size).jpeg().toBuffer()],
    ['progressive JPEG', await picture(3, size).jpeg({ progressive: true }).toBuffer()],
    ['PNG', await picture(3, size).png().toBuffer()],
    ['interlaced PNG', await picture(3, size).png({ progressive: true }).toBuffer()],
    ['WebP', await picture(3, size).webp().toBuffer()],
    ['lossless WebP', await picture(3, size).webp({ lossless: true }).toBuffer()],
    ['TIFF with its directory at the end', await picture(3, size).tiff({ compression: 'lzw' }).toBuffer()],
    ['TIFF with its directory in front', tiffOfPixels(pixels, size.width, size.height)],
    ['AVIF', await picture(3, size).avif({ effort: 0 }).toBuffer()],
    ['HEIC', await readFile(new URL('../fixtures/images/p3.heic', import.meta.url))],
  ]
  return whole.flatMap(([name, bytes]) => [
    ...[0.1, 0.25, 0.5, 0.75, 0.95].map(part =>
      refused(`${name} cut at ${part * 100} %`, bytes.subarray(0, Math.floor(bytes.length * part)), line),
    ),
    refused(`${name} without its last 40 bytes`, bytes.subarray(0, bytes.length - 40), line),
  ])
}
