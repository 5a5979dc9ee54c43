// File signatures of the formats people most often have beside their photos, and what each one is called.
import type { PhotoFormat } from '../../../shared/job/tray-schema.ts'

/** `other` completes "This is ...": "a PDF document". */
export type ContentKind = { format: PhotoFormat } | { other: string }

type Magic = { at: number; bytes: string; is: string }

const magic = (bytes: string, is: string, at = 0): Magic => ({ at, bytes, is })

/** `bytes` is written as latin-1. */
export const signaturesOfOthers: readonly Magic[] = [
  magic('GIF87a', 'a GIF picture'),
  magic('GIF89a', 'a GIF picture'),
  magic('%PDF-', 'a PDF document'),
  magic('%!PS', 'a PostScript document'),
  magic('\xc5\xd0\xd3\xc6', 'a PostScript document'),
  magic('PK\x03\x04', 'a ZIP archive or an office document'),
  magic('PK\x05\x06', 'an empty ZIP archive'),
  magic('\x1f\x8b', 'a gzip archive'),
  magic('7z\xbc\xaf\x27\x1c', 'a 7-Zip archive'),
  magic('Rar!\x1a\x07', 'a RAR archive'),
  magic('BZh', 'a bzip2 archive'),
  magic('\xfd7zXZ\x00', 'an xz archive'),
  magic('\x28\xb5\x2f\xfd', 'a Zstandard archive'),
  magic('ustar', 'a tar archive', 257),
  magic('8BPS', 'a layered picture (PSD)'),
  magic('\xff\x0a', 'a JPEG XL picture'),
  magic('\x00\x00\x00\x0cJXL \r\n\x87\n', 'a JPEG XL picture'),
  magic('\x00\x00\x00\x0cjP  \r\n\x87\n', 'a JPEG 2000 picture'),
  magic('\xff\x4f\xff\x51', 'a JPEG 2000 picture'),
  magic('\x00\x00\x01\x00', 'an icon (ICO)'),
  magic('FUJIFILMCCD-RAW', 'a camera raw file'),
  magic('IIRO', 'a camera raw file'),
  magic('IIRS', 'a camera raw file'),
  magic('IIU\x00', 'a camera raw file'),
  magic('FOVb', 'a camera raw file'),
  magic('v/1\x01', 'an OpenEXR picture'),
  magic('\x1aE\xdf\xa3', 'a video'),
  magic('AVI ', 'a video', 8),
  magic('WAVE', 'a sound recording', 8),
  magic('OggS', 'a sound recording'),
  magic('ID3', 'a sound recording'),
  magic('fLaC', 'a sound recording'),
  magic('MZ', 'a program'),
  magic('\x7fELF', 'a program'),
  magic('\xcf\xfa\xed\xfe', 'a program'),
  magic('SQLite format 3\x00', 'a database'),
]
