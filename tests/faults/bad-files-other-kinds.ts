// Files that are no photos, under the names of photos: each is refused by what it is.
import { gzipSync } from 'node:zlib'
import { type BadFile, latin1, refused } from './bad-files-case.ts'

const utf16 = (text: string): Buffer => Buffer.concat([latin1('\xff\xfe'), Buffer.from(text, 'utf16le')])
const padded = (start: string, length = 600): Buffer =>
  Buffer.concat([latin1(start), Buffer.alloc(length, 0x5a)])
const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><script>1</script></svg>'

/** A TIFF whose first directory has these tags (number, value), all of type LONG. */
function tiffWith(tags: readonly [tag: number, value: number][], head = ''): Buffer {
  const start = 8 + head.length
  const bytes = Buffer.alloc(start + 2 + tags.length * 12 + 4)
  bytes.write(`II*\0`, 0, 'latin1')
  bytes.writeUInt32LE(start, 4)
  bytes.write(head, 8, 'latin1')
  bytes.writeUInt16LE(tags.length, start)
  tags.forEach(([tag, value], i) => {
    const at = start + 2 + i * 12
    bytes.writeUInt16LE(tag, at)
    bytes.writeUInt16LE(4, at + 2)
    bytes.writeUInt32LE(1, at + 4)
    bytes.writeUInt32LE(value, at + 8)
  })
  return bytes
}

const isoMedia = (...brands: string[]): Buffer => {
  const box = Buffer.alloc(8 + 4 * (brands.length + 1))
  box.writeUInt32BE(box.length, 0)
  box.write(`ftyp${brands[0]}\0\0\0\0${brands.slice(1).join('')}`, 4, 'latin1')
  return Buffer.concat([box, Buffer.alloc(400)])
}

function tar(): Buffer {
  const bytes = Buffer.alloc(1024)
  bytes.write('photo.jpg', 0, 'latin1')
  bytes.write('ustar', 257, 'latin1')
  return bytes
}

/** Bytes without any pattern, always the same ones. */
export function noise(length: number, seed = 1): Buffer {
  const bytes = Buffer.alloc(length)
  let state = seed
  for (let i = 0; i < length; i++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    bytes[i] = state >>> 24
  }
  return bytes
}

const is = (kind: string): RegExp =>
  new RegExp(
    `^This is ${kind.replace(/[()]/g, '\\$&')}\\. Add photos as JPEG, PNG, WebP, TIFF, AVIF or HEIC\\.$`,
  )

const kinds: readonly [what: string, bytes: Uint8Array, kind: string][] = [
  ['SVG', latin1(svg), 'a drawing (SVG)'],
  [
    'SVG after a declaration and a comment',
    latin1(`<?xml version="1.0"?>\n<!-- jpg -->\n${svg}`),
    'a drawing (SVG)',
  ],
  ['packed SVG', gzipSync(svg), 'a gzip archive'],
  [
    'HTML',
    latin1('<!DOCTYPE html><html><body><img src="x" onerror="alert(1)"></body></html>'),
    'a web page (HTML)',
  ],
  ['XML', latin1('<?xml version="1.0"?><job/>'), 'an XML file'],
  ['JSON', latin1('{"schemaVersion":1}'), 'a JSON or other text file'],
  ['CSV', latin1('cylinder,psi\r\n1,150\r\n2,148\r\n'), 'a text file'],
  ['text in UTF-16', utf16('cylinder 3 was wet'), 'a text file'],
  ['text with letters of another alphabet', Buffer.from('цилиндр 3', 'utf8'), 'a text file'],
  ['a text that begins like a TIFF', latin1('II. What the plugs told'), 'a text file'],
  ['white space', latin1(' \r\n\t '), 'only white space'],
  ['GIF', padded('GIF89a'), 'a GIF picture'],
  ['GIF with a JPEG in it', Buffer.concat([padded('GIF89a'), latin1('\xff\xd8\xff\xe0')]), 'a GIF picture'],
  ['BMP', padded('BM'), 'a BMP picture'],
  ['icon', padded('\0\0\x01\0'), 'an icon (ICO)'],
  ['JPEG XL', padded('\xff\x0a'), 'a JPEG XL picture'],
  ['JPEG 2000', padded('\0\0\0\x0cjP  \r\n\x87\n'), 'a JPEG 2000 picture'],
  ['layered picture', padded('8BPS'), 'a layered picture (PSD)'],
  ['PDF', padded('%PDF-1.7\n'), 'a PDF document'],
  ['PostScript', padded('%!PS-Adobe-3.0 EPSF-3.0\n'), 'a PostScript document'],
  ['ZIP', padded('PK\x03\x04'), 'a ZIP archive or an office document'],
  ['7-Zip', padded('7z\xbc\xaf\x27\x1c'), 'a 7-Zip archive'],
  ['RAR', padded('Rar!\x1a\x07\x01\0'), 'a RAR archive'],
  ['xz', padded('\xfd7zXZ\0'), 'an xz archive'],
  ['tar', tar(), 'a tar archive'],
  ['program for Windows', padded('MZ\x90\0'), 'a program'],
  ['program for Linux', padded('\x7fELF\x02'), 'a program'],
  ['database', padded('SQLite format 3\0'), 'a database'],
  ['MP4 video', isoMedia('isom', 'iso2', 'mp41'), 'a video'],
  ['film of a phone', isoMedia('qt  '), 'a video'],
  ['Matroska video', padded('\x1aE\xdf\xa3'), 'a video'],
  ['WAV sound', padded('RIFF\0\0\0\0WAVE'), 'a sound recording'],
  ['MP3 sound', padded('ID3\x04'), 'a sound recording'],
  ['HEIF that holds JPEG', isoMedia('mif1', 'jpeg'), 'a HEIF picture that holds JPEG'],
  ['camera raw with a version tag', tiffWith([[50706, 0x0104]]), 'a camera raw file'],
  ['camera raw that begins with a preview', tiffWith([[254, 1]]), 'a camera raw file'],
  ['camera raw with letters after the header', tiffWith([[256, 100]], 'CR\x02\0'), 'a camera raw file'],
  ['camera raw in boxes', isoMedia('crx '), 'a camera raw file'],
  ['random bytes', noise(5000), 'not a picture in a format this app knows'],
  ['zeros', Buffer.alloc(5000), 'not a picture in a format this app knows'],
  ['one byte', Buffer.from([0xff]), 'not a picture in a format this app knows'],
]

export const otherKinds = (): BadFile[] => [
  ...kinds.map(([what, bytes, kind]) => refused(what, bytes, is(kind))),
  refused('no bytes', Buffer.alloc(0), /^The file is empty\. Copy it from the camera or phone again\.$/),
]
