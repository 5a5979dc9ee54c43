// Tells a TIFF picture from a camera raw file, which is a TIFF too but whose first page is only a small preview.
import type { ContentKind } from './file-signatures.ts'

const newSubfileType = 254
const dngVersion = 50706
const raw: ContentKind = { other: 'a camera raw file' }
const tiff: ContentKind = { format: 'tiff' }

/** Null: begins like a TIFF but is none (a text that starts with "II", say). TIFF 6.0, sections 2 and 8. */
export function kindOfTiff(bytes: Uint8Array): ContentKind | null {
  if (bytes.length < 8) return null
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const little = bytes[0] === 0x49
  const version = view.getUint16(2, little)
  if (version === 43) return tiff
  if (version !== 42) return null
  if (bytes[8] === 0x43 && bytes[9] === 0x52) return raw // "CR"
  const directory = view.getUint32(4, little)
  // Often at the end of the file, beyond the sniffed bytes; the caller hands over the whole file then.
  if (directory + 2 > bytes.length) return tiff
  const entries = view.getUint16(directory, little)
  for (let i = 0; i < entries; i++) {
    const at = directory + 2 + i * 12
    if (at + 12 > bytes.length) break
    const tag = view.getUint16(at, little)
    if (tag === dngVersion) return raw
    if (tag === newSubfileType && (view.getUint32(at + 8, little) & 1) === 1) return raw
  }
  return tiff
}
