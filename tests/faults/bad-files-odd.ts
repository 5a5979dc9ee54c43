// Files that look wrong but hold a whole picture: they go in, as what they are.
import { readFile } from 'node:fs/promises'
import sharp from 'sharp'
import { drawing, picture } from '../fixtures/images/pictures.ts'
import { added, type BadFile, latin1 } from './bad-files-case.ts'
import { noise } from './bad-files-other-kinds.ts'

/** Segments put right behind the start of a JPEG: marker and payload each (T.81, B.1.1.4). */
export function withSegments(jpeg: Buffer, ...segments: [marker: number, payload: Uint8Array][]): Buffer {
  const made = segments.map(([marker, payload]) => {
    const head = Buffer.from([0xff, marker, 0, 0])
    head.writeUInt16BE(payload.length + 2, 2)
    return Buffer.concat([head, payload])
  })
  return Buffer.concat([jpeg.subarray(0, 2), ...made, jpeg.subarray(2)])
}

const exif = (body: Uint8Array): [number, Uint8Array] => [0xe1, Buffer.concat([latin1('Exif\0\0'), body])]
const icc = (body: Uint8Array): [number, Uint8Array] => [
  0xe2,
  Buffer.concat([latin1('ICC_PROFILE\0\x01\x01'), body]),
]

/** A directory whose Exif pointer leads back to itself, and whose next directory is itself too. */
function loopingDirectory(): Buffer {
  const bytes = Buffer.alloc(26)
  bytes.write('II*\0', 0, 'latin1')
  bytes.writeUInt32LE(8, 4)
  bytes.writeUInt16LE(1, 8)
  bytes.writeUInt16LE(0x8769, 10)
  bytes.writeUInt16LE(4, 12)
  bytes.writeUInt32LE(1, 14)
  bytes.writeUInt32LE(8, 18)
  bytes.writeUInt32LE(8, 22)
  return bytes
}

/** Claims 65,535 entries of 4 GB each. */
function boastingDirectory(): Buffer {
  const bytes = Buffer.alloc(200, 0xff)
  bytes.write('II*\0', 0, 'latin1')
  bytes.writeUInt32LE(8, 4)
  return bytes
}

export async function oddButWhole(): Promise<BadFile[]> {
  const fixture = (name: string) => readFile(new URL(`../fixtures/images/${name}`, import.meta.url))
  let seed = 100
  // Each case has its own picture, so that none is a duplicate of another.
  const next = (width = 96, height = 64) => picture(seed++, { width, height })
  const jpeg = () => next().jpeg().toBuffer()
  const comments = Array.from({ length: 17 }, (): [number, Uint8Array] => [0xfe, Buffer.alloc(65_000, 0x20)])
  const grey = drawing(7, 96, 64).subarray(0, 96 * 64)
  const frames = Buffer.concat([drawing(1, 96, 64), drawing(2, 96, 64)])
  const animated = { raw: { width: 96, height: 128, channels: 3 as const, pageHeight: 64 } }
  const size = { width: 96, height: 64 }
  return [
    added('JPEG named as PNG', await jpeg(), 'jpeg', size, 'plug.png'),
    added('PNG named as HEIC', await next().png().toBuffer(), 'png', size, 'plug.heic'),
    added('HEIC named as JPEG', await fixture('srgb.heic'), 'heic', { width: 320, height: 160 }, 'plug.jpeg'),
    added('HEIC of 10 bits', await fixture('p3-10bit.heic'), 'heic', { width: 320, height: 160 }),
    added('WebP without an extension', await next().webp().toBuffer(), 'webp', size, 'plug'),
    added('AVIF named as text', await next().avif({ effort: 0 }).toBuffer(), 'avif', size, 'plug.txt'),
    added('JPEG with junk behind it', Buffer.concat([await jpeg(), noise(3000)]), 'jpeg', size),
    added(
      'JPEG with an archive behind it',
      Buffer.concat([await jpeg(), latin1('PK\x03\x04')]),
      'jpeg',
      size,
    ),
    added(
      'JPEG with a second picture behind it, as phones write depth and previews',
      Buffer.concat([withSegments(await jpeg(), [0xe2, latin1('MPF\0II*\0\x08\0\0\0')]), await jpeg()]),
      'jpeg',
      size,
    ),
    added('JPEG with garbage for Exif', withSegments(await jpeg(), exif(noise(3000))), 'jpeg', size),
    added(
      'JPEG with a full segment of garbage for Exif',
      withSegments(await jpeg(), exif(noise(65_000))),
      'jpeg',
      size,
    ),
    added(
      'JPEG with an Exif directory that leads to itself',
      withSegments(await jpeg(), exif(loopingDirectory())),
      'jpeg',
      size,
    ),
    added(
      'JPEG with an Exif directory that claims everything',
      withSegments(await jpeg(), exif(boastingDirectory())),
      'jpeg',
      size,
    ),
    added('JPEG with an empty Exif block', withSegments(await jpeg(), exif(new Uint8Array())), 'jpeg', size),
    added('JPEG with 1 MB of comment', withSegments(await jpeg(), ...comments), 'jpeg', size),
    added('JPEG with garbage for a profile', withSegments(await jpeg(), icc(noise(900))), 'jpeg', {
      profile: 'profile without a readable name',
    }),
    added('JPEG with a profile cut short', withSegments(await jpeg(), icc(Buffer.alloc(20))), 'jpeg', size),
    added('CMYK JPEG', await next().toColourspace('cmyk').jpeg().toBuffer(), 'jpeg', size),
    added('grey JPEG', await next().greyscale().jpeg().toBuffer(), 'jpeg', size),
    added('PNG of 16 bits', await next().toColourspace('rgb16').png().toBuffer(), 'png', size),
    added('PNG of one bit', await next().png({ palette: true, colours: 2 }).toBuffer(), 'png', size),
    added(
      'grey PNG',
      await sharp(grey, { raw: { ...size, channels: 1 } })
        .toColourspace('b-w')
        .png()
        .toBuffer(),
      'png',
      size,
    ),
    added(
      'grey PNG with transparency',
      await sharp(drawing(8, 96, 64).subarray(0, 96 * 64 * 2), { raw: { ...size, channels: 2 } })
        .toColourspace('b-w')
        .png()
        .toBuffer(),
      'png',
      size,
    ),
    added('PNG with transparency', await next().ensureAlpha(0.5).png().toBuffer(), 'png', size),
    added(
      'animated WebP',
      await sharp(frames, animated)
        .webp({ delay: [100, 100] })
        .toBuffer(),
      'webp',
      size,
    ),
    added('TIFF of two pages', await twoPages(), 'tiff', size),
    added('CMYK TIFF', await next().toColourspace('cmyk').tiff().toBuffer(), 'tiff', size),
    added('TIFF of 16 bits', await next().toColourspace('rgb16').tiff().toBuffer(), 'tiff', size),
    added('JPEG of one pixel', await next(1, 1).jpeg().toBuffer(), 'jpeg', { width: 1, height: 1 }),
    added('PNG 20,000 px wide and 1 px high', await next(20_000, 1).png().toBuffer(), 'png', {
      width: 20_000,
      height: 1,
    }),
    added(
      'JPEG with a bidi override in its name',
      await jpeg(),
      'jpeg',
      { fileName: 'plug<U+202E>gnp.jpg' },
      'plug\u202egnp.jpg',
    ),
    added(
      'JPEG with an escape sequence in its name',
      await jpeg(),
      'jpeg',
      { fileName: '<U+001B>[31mred.jpg' },
      '\u001b[31mred.jpg',
    ),
    added(
      'JPEG with a line break in its name',
      await jpeg(),
      'jpeg',
      { fileName: 'a<U+000A>b.jpg' },
      'a\nb.jpg',
    ),
    added(
      'JPEG named like a spreadsheet formula',
      await jpeg(),
      'jpeg',
      { fileName: '=1+1.jpg' },
      '=1+1.jpg',
    ),
    added('JPEG named like a device', await jpeg(), 'jpeg', { fileName: 'CON' }, 'CON'),
    added('JPEG with a very long name', await jpeg(), 'jpeg', {}, `${'x'.repeat(251)}.jpg`),
  ]
}

/** The second page hangs on the first one's directory, which is at the end of the first file. */
async function twoPages(): Promise<Buffer> {
  const data = Buffer.concat([drawing(31, 96, 64), drawing(32, 96, 64)])
  return sharp(data, { raw: { width: 96, height: 128, channels: 3, pageHeight: 64 } })
    .tiff()
    .toBuffer()
}
