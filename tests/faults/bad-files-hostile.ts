// Files made to hurt: headers that lie, pictures that unpack to far more than they weigh, structures without end.
import { readFile } from 'node:fs/promises'
import { crc32, deflateSync } from 'node:zlib'
import sharp from 'sharp'
import { picture } from '../fixtures/images/pictures.ts'
import { added, type BadFile, latin1, refused } from './bad-files-case.ts'
import { noise } from './bad-files-other-kinds.ts'

const tooLarge =
  /^This (JPEG|PNG|TIFF|WebP|HEIC|AVIF) claims [\d,]+ x [\d,]+ pixels; at most [\d,]+ megapixels are opened\. Add a smaller copy\.$/
const bad = /^This (JPEG|PNG|TIFF|WebP|HEIC|AVIF) (is (cut short|damaged)|holds more than).*\.$/

function pngChunk(type: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([latin1(type), data])
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)]
  length.writeUInt32BE(data.length)
  check.writeUInt32BE(crc32(body))
  return Buffer.concat([length, body, check])
}

/** Named text or profile whose content is zeros without end. */
function bomb(type: 'iCCP' | 'zTXt'): Buffer {
  return pngChunk(
    type,
    Buffer.concat([latin1('name\0\0'), deflateSync(Buffer.alloc(200 * 1024 * 1024), { level: 9 })]),
  )
}

const texts = (count: number): Buffer[] =>
  Array.from({ length: count }, (_, i) => pngChunk('tEXt', latin1(`key${i}\0text`)))

type Png = {
  width: number
  height: number
  bits?: number
  colour?: number
  interlaced?: boolean
  extra?: Buffer[]
  data: Uint8Array
}

const png = ({ width, height, bits = 8, colour = 2, interlaced = false, extra = [], data }: Png): Buffer => {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header.set([bits, colour, 0, 0, interlaced ? 1 : 0], 8)
  const signature = latin1('\x89PNG\r\n\x1a\n')
  return Buffer.concat([
    signature,
    pngChunk('IHDR', header),
    ...extra,
    pngChunk('IDAT', data),
    pngChunk('IEND', Buffer.alloc(0)),
  ])
}

/** A copy with these bytes put in behind the first place where `mark` stands. */
function patched(bytes: Uint8Array, mark: string, skip: number, put: readonly number[]): Buffer {
  const copy = Buffer.from(bytes)
  const at = copy.indexOf(latin1(mark))
  if (at < 0) throw new Error(`no ${mark}`)
  copy.set(put, at + mark.length + skip)
  return copy
}

const twice16 = (value: number): number[] => [value >> 8, value & 255, value >> 8, value & 255]
const twice32 = (value: number): number[] => [0, 0, value >> 8, value & 255, 0, 0, value >> 8, value & 255]

/** Sets one tag of the first directory of a little-endian TIFF. */
function tiffTag(bytes: Uint8Array, tag: number, value: number): Buffer {
  const copy = Buffer.from(bytes)
  const directory = copy.readUInt32LE(4)
  for (let i = 0; i < copy.readUInt16LE(directory); i++) {
    const at = directory + 2 + i * 12
    if (copy.readUInt16LE(at) !== tag) continue
    copy.writeUInt16LE(4, at + 2)
    copy.writeUInt32LE(value, at + 8)
  }
  return copy
}

/** The same scan over and over: cheap to write, dear to decode. */
function manyScans(progressive: Buffer, times: number): Buffer {
  const last = progressive.lastIndexOf(latin1('\xff\xda'))
  const scan = progressive.subarray(last, progressive.length - 2)
  return Buffer.concat([
    progressive.subarray(0, last),
    ...Array.from({ length: times }, () => scan),
    latin1('\xff\xd9'),
  ])
}

/** A TIFF's chain of directories, the same one again and again, without a picture in it. */
function endlessChain(pages: number): Buffer {
  const bytes = Buffer.alloc(8 + pages * 18)
  bytes.write('II*\0', 0, 'latin1')
  bytes.writeUInt32LE(8, 4)
  for (let page = 0; page < pages; page++) {
    const at = 8 + page * 18
    bytes.writeUInt16LE(1, at)
    bytes.writeUInt16LE(256, at + 2)
    bytes.writeUInt16LE(4, at + 4)
    bytes.writeUInt32LE(1, at + 6)
    bytes.writeUInt32LE(16, at + 10)
    bytes.writeUInt32LE(page + 1 < pages ? at + 18 : 8, at + 14)
  }
  return bytes
}

export async function hostile(): Promise<BadFile[]> {
  const size = { width: 96, height: 64 }
  const jpeg = await picture(1, size).jpeg().toBuffer()
  const progressive = await picture(1, size).jpeg({ progressive: true }).toBuffer()
  const webp = await picture(1, size).webp().toBuffer()
  const tiff = await picture(1, size).tiff({ compression: 'none' }).toBuffer()
  const avif = await picture(1, size).avif({ effort: 0 }).toBuffer()
  const heic = await readFile(new URL('../fixtures/images/p3.heic', import.meta.url))
  const plain = await picture(1, size).png().toBuffer()
  const few = deflateSync(Buffer.alloc(2000))
  const pixels = deflateSync(Buffer.alloc((96 * 3 + 1) * 64, 0))
  const flat = png({
    width: 14_000,
    height: 14_000,
    colour: 0,
    data: deflateSync(Buffer.alloc(14_001 * 14_000)),
  })
  const ground = (width: number, height: number) =>
    sharp({ create: { width, height, channels: 3, background: '#c8a078' } })
  const wide = await ground(9000, 8000).jpeg({ progressive: true }).toBuffer()
  const broad = await ground(8000, 8000).webp({ effort: 0 }).toBuffer()
  const baselineFrame = '\xff\xc0\0\x11\x08'
  const progressiveFrame = '\xff\xc2\0\x11\x08'
  return [
    refused(
      'PNG of 30,000 x 30,000 px in 110 kB',
      png({
        width: 30_000,
        height: 30_000,
        bits: 1,
        colour: 0,
        data: deflateSync(Buffer.alloc(3751 * 30_000), { level: 9 }),
      }),
      tooLarge,
    ),
    refused(
      'PNG that claims 65,535 x 65,535 px',
      png({ width: 65_535, height: 65_535, data: few }),
      tooLarge,
    ),
    refused(
      'PNG that claims 2,147,483,647 x 2,147,483,647 px',
      png({ width: 0x7fffffff, height: 0x7fffffff, data: few }),
      bad,
    ),
    refused('PNG that claims 14,000 x 14,000 px', png({ width: 14_000, height: 14_000, data: few }), bad),
    refused(
      'interlaced PNG that claims 14,000 x 14,000 px',
      png({ width: 14_000, height: 14_000, bits: 16, interlaced: true, data: few }),
      tooLarge,
    ),
    refused('PNG of no width', png({ width: 0, height: 10, data: few }), bad),
    refused('PNG with a wrong check sum', patched(plain, 'IHDR', 13, [0, 0, 0, 0]), bad),
    refused('PNG with noise for pixels', png({ width: 96, height: 64, data: noise(3000) }), bad),
    refused(
      'JPEG that claims 65,500 x 65,500 px',
      patched(jpeg, baselineFrame, 0, twice16(65_500)),
      tooLarge,
    ),
    refused(
      'JPEG that claims 65,535 x 65,535 px',
      patched(jpeg, baselineFrame, 0, twice16(65_535)),
      /^This JPEG holds more than this app opens\. Add a smaller copy\.$/,
    ),
    refused('JPEG that claims 14,000 x 14,000 px', patched(jpeg, baselineFrame, 0, twice16(14_000)), bad),
    refused(
      'progressive JPEG that claims 14,000 x 14,000 px',
      patched(progressive, progressiveFrame, 0, twice16(14_000)),
      tooLarge,
    ),
    refused('JPEG of no size', patched(jpeg, baselineFrame, 0, [0, 0, 0, 0]), bad),
    refused('JPEG with noise for its tables', patched(jpeg, '\xff\xc4', 2, [...noise(60)]), bad),
    refused('progressive JPEG of 5,000 scans', manyScans(progressive, 5000), bad),
    refused('only the first bytes of a JPEG', latin1('\xff\xd8\xff'), bad),
    refused('only the signature of a PNG', latin1('\x89PNG\r\n\x1a\n'), bad),
    refused('only the head of a WebP', latin1('RIFF\x04\0\0\0WEBP'), bad),
    refused('only the head of a TIFF', latin1('II*\0\x08\0\0\0'), bad),
    refused('only the head of a HEIC', latin1('\0\0\0\x10ftypheic\0\0\0\0'), bad),
    refused('only the head of an AVIF', latin1('\0\0\0\x10ftypavif\0\0\0\0'), bad),
    refused(
      'WebP with noise behind its head',
      Buffer.concat([webp.subarray(0, 30), noise(webp.length - 30)]),
      bad,
    ),
    refused(
      'WebP that claims 16,383 x 16,383 px',
      patched(webp, '\x9d\x01\x2a', 0, [0xff, 0x3f, 0xff, 0x3f]),
      /^This WebP (claims|is)/,
    ),
    refused(
      'TIFF that claims 100,000 x 100,000 px',
      tiffTag(tiffTag(tiff, 256, 100_000), 257, 100_000),
      tooLarge,
    ),
    refused('TIFF that claims 14,000 x 14,000 px', tiffTag(tiffTag(tiff, 256, 14_000), 257, 14_000), bad),
    refused('TIFF of 1,000 channels', tiffTag(tiff, 277, 1000), /^This TIFF/),
    refused('TIFF of 10,000 pages that leads back to its beginning', endlessChain(10_000), bad),
    refused(
      'TIFF whose directory lies beyond its end',
      Buffer.concat([latin1('II*\0\xff\xff\xff\x7f'), noise(500)]),
      bad,
    ),
    refused(
      'AVIF that claims 65,535 x 65,535 px',
      patched(avif, 'ispe', 4, twice32(65_535)),
      /^This AVIF (claims|is|holds)/,
    ),
    refused(
      'HEIC that claims 65,535 x 65,535 px',
      patched(heic, 'ispe', 4, twice32(65_535)),
      /^This HEIC (claims|is|holds)/,
    ),
    refused(
      'HEIC that claims 7,000 x 7,000 px',
      patched(heic, 'ispe', 4, twice32(7000)),
      /^This HEIC (claims|is|holds)/,
    ),
    // HEVC carries no check sum: noise decodes to a picture of noise, which a person sees. Only what is missing is noticed.
    added(
      'HEIC with noise for pixels',
      Buffer.concat([heic.subarray(0, heic.length - 800), noise(800)]),
      'heic',
    ),
    added('PNG of 196 megapixels in 200 kB', flat, 'png', { width: 14_000, height: 14_000 }),
    added('progressive JPEG of 72 megapixels', wide, 'jpeg', { width: 9000, height: 8000 }),
    added('WebP of 64 megapixels', broad, 'webp', { width: 8000, height: 8000 }),
    added(
      'PNG with a profile that unpacks to 200 MB',
      png({ ...size, extra: [bomb('iCCP')], data: pixels }),
      'png',
    ),
    added(
      'PNG with a text that unpacks to 200 MB',
      png({ ...size, extra: [bomb('zTXt')], data: pixels }),
      'png',
    ),
    added('PNG with 50,000 texts', png({ ...size, extra: texts(50_000), data: pixels }), 'png'),
  ]
}
