// Wraps raw pixels and their colour profile as an uncompressed TIFF in memory. This assigns the profile: the code
// values stay as they are, and whoever reads the TIFF converts them. (sharp itself can only convert to a profile.)

const short = 3
const long = 4
const undefinedBytes = 7
const entrySize = 12

type Entry = { tag: number; type: number; count: number; value: number }

/**
 * `rgba`: 8 bits a channel, row by row, `width * height * 4` bytes. The fourth channel is marked unspecified and
 * carries nothing for photos. TIFF 6.0, section 8; the profile is tag 34675 (ICC.1:2022, annex B.4).
 */
export function tiffOfPixels(rgba: Uint8Array, width: number, height: number, icc?: Uint8Array): Uint8Array {
  const tags = icc === undefined ? 11 : 12
  const bitsAt = 8 + 2 + tags * entrySize + 4
  const iccAt = bitsAt + 8
  const pixelsAt = Math.ceil((iccAt + (icc?.length ?? 0)) / 4) * 4
  const entries: Entry[] = [
    { tag: 256, type: long, count: 1, value: width },
    { tag: 257, type: long, count: 1, value: height },
    { tag: 258, type: short, count: 4, value: bitsAt },
    { tag: 259, type: short, count: 1, value: 1 }, // no compression
    { tag: 262, type: short, count: 1, value: 2 }, // RGB
    { tag: 273, type: long, count: 1, value: pixelsAt },
    { tag: 277, type: short, count: 1, value: 4 },
    { tag: 278, type: long, count: 1, value: height },
    { tag: 279, type: long, count: 1, value: rgba.length },
    { tag: 284, type: short, count: 1, value: 1 }, // channels beside each other
    { tag: 338, type: short, count: 1, value: 0 }, // fourth channel unspecified
  ]
  if (icc !== undefined) entries.push({ tag: 34675, type: undefinedBytes, count: icc.length, value: iccAt })

  const bytes = new Uint8Array(pixelsAt + rgba.length)
  const view = new DataView(bytes.buffer)
  view.setUint32(0, 0x49492a00) // "II", 42 little-endian
  view.setUint32(4, 8, true)
  view.setUint16(8, entries.length, true)
  entries.forEach((entry, i) => {
    const at = 10 + i * entrySize
    view.setUint16(at, entry.tag, true)
    view.setUint16(at + 2, entry.type, true)
    view.setUint32(at + 4, entry.count, true)
    view.setUint32(at + 8, entry.value, true)
  })
  for (let channel = 0; channel < 4; channel++) view.setUint16(bitsAt + channel * 2, 8, true)
  if (icc !== undefined) bytes.set(icc, iccAt)
  bytes.set(rgba, pixelsAt)
  return bytes
}
