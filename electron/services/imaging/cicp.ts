// Colour of HEIC and AVIF pictures that carry no profile but three code numbers instead (ISO/IEC 14496-12, `colr` box
// of type `nclx`; the numbers are those of ITU-T H.273). The decoders pass the pixels on without converting them.
import { openHeader, openPixels } from './sharp-settings.ts'

/** H.273, table 2. */
const primaryNames: Readonly<Record<number, string>> = { 9: 'BT.2020', 12: 'Display P3' }
export const displayP3 = 12

const boxHeader = 8
const containers = new Set(['meta', 'iprp', 'ipco'])

/** Walks `meta/iprp/ipco` only; boxes that lie about their length end the walk. */
function findPrimaries(bytes: Uint8Array, from: number, to: number): number | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  for (let at = from; at + boxHeader <= to; ) {
    const size = view.getUint32(at)
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8))
    if (size < boxHeader || at + size > to) return null
    const body = at + boxHeader + (type === 'meta' ? 4 : 0)
    if (containers.has(type)) {
      const found = findPrimaries(bytes, body, at + size)
      if (found !== null) return found
    }
    const isNclx =
      type === 'colr' && size >= 18 && String.fromCharCode(...bytes.subarray(body, body + 4)) === 'nclx'
    if (isNclx) return view.getUint16(body + 4)
    at += size
  }
  return null
}

/** Number and name of the primaries, where they are neither sRGB's nor unspecified. */
export function widePrimaries(bytes: Uint8Array): { primaries: number; name: string } | null {
  const primaries = findPrimaries(bytes, 0, bytes.length)
  const name = primaries === null ? undefined : primaryNames[primaries]
  return primaries === null || name === undefined ? null : { primaries, name }
}

let profile: Promise<Uint8Array> | undefined

/** A Display P3 profile, as libvips brings it along. */
export function displayP3Profile(): Promise<Uint8Array> {
  profile ??= makeProfile()
  return profile
}

async function makeProfile(): Promise<Uint8Array> {
  const pixel = openPixels(new Uint8Array(3), { width: 1, height: 1, channels: 3 })
  const { icc } = await openHeader(await pixel.withIccProfile('p3').png().toBuffer()).metadata()
  if (icc === undefined) throw new Error('The decoder brings no Display P3 profile.')
  return icc
}
