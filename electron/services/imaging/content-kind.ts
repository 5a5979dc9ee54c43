// Says what a file is by its content, never by its name: one of the six formats that go in, or the name of what it is.
import { type ContentKind, signaturesOfOthers } from './file-signatures.ts'
import { kindOfIsoMedia } from './iso-media-kind.ts'
import { textKind } from './text-kind.ts'
import { kindOfTiff } from './tiff-kind.ts'

const startsWith = (bytes: Uint8Array, signature: string, at = 0): boolean => {
  if (bytes.length < at + signature.length) return false
  for (let i = 0; i < signature.length; i++) {
    if (bytes[at + i] !== signature.charCodeAt(i)) return false
  }
  return true
}

/** `bytes` is the whole file, or its beginning where the rest is not to be read. */
export function contentKind(bytes: Uint8Array): ContentKind {
  if (bytes.length === 0) return { other: 'empty' }
  if (startsWith(bytes, '\xff\xd8\xff')) return { format: 'jpeg' }
  if (startsWith(bytes, '\x89PNG\r\n\x1a\n')) return { format: 'png' }
  if (startsWith(bytes, 'RIFF') && startsWith(bytes, 'WEBP', 8)) return { format: 'webp' }
  if (startsWith(bytes, 'II') || startsWith(bytes, 'MM')) {
    const kind = kindOfTiff(bytes)
    if (kind !== null) return kind
  }
  if (startsWith(bytes, 'ftyp', 4)) return kindOfIsoMedia(bytes)
  const known = signaturesOfOthers.find(other => startsWith(bytes, other.bytes, other.at))
  if (known !== undefined) return { other: known.is }
  if (startsWith(bytes, 'BM') && bytes.length >= 26) return { other: 'a BMP picture' }
  return { other: textKind(bytes) ?? 'not a picture in a format this app knows' }
}
