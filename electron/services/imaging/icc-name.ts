// Reads the name of an embedded colour profile (ICC.1:2022, `desc` tag; version 2 has its own text type there).

const signature = (text: string): number =>
  Array.from(text).reduce((value, letter) => value * 256 + letter.charCodeAt(0), 0)
const acsp = signature('acsp')
const descTag = signature('desc')
const multiLocalized = signature('mluc')
const maxName = 120

/** Never null, so that a profile that cannot be read is said rather than taken for "untagged". */
export const unreadableProfile = 'profile without a readable name'

function clean(text: string): string {
  const plain = text.replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cn}\p{Cs}\ufffd]/gu, '').trim()
  return plain === ''
    ? unreadableProfile
    : Array.from(plain)
        .slice(0, maxName / 2)
        .join('')
}

function textAt(view: DataView, at: number, size: number): string {
  const type = view.getUint32(at)
  if (type === descTag) {
    const length = Math.min(view.getUint32(at + 8), size - 12)
    const bytes = new Uint8Array(view.buffer, view.byteOffset + at + 12, Math.max(length, 0))
    return new TextDecoder('latin1').decode(bytes)
  }
  if (type === multiLocalized && view.getUint32(at + 8) > 0) {
    const length = view.getUint32(at + 20)
    const offset = view.getUint32(at + 24)
    const bytes = new Uint8Array(view.buffer, view.byteOffset + at + offset, Math.min(length, 1024))
    return new TextDecoder('utf-16be').decode(bytes)
  }
  return ''
}

export function iccName(profile: Uint8Array): string {
  const view = new DataView(profile.buffer, profile.byteOffset, profile.byteLength)
  try {
    if (view.getUint32(36) !== acsp) return unreadableProfile
    const tags = Math.min(view.getUint32(128), 100)
    for (let i = 0; i < tags; i++) {
      const at = 132 + i * 12
      if (view.getUint32(at) !== descTag) continue
      return clean(textAt(view, view.getUint32(at + 4), view.getUint32(at + 8)))
    }
  } catch (error) {
    // Reading past the end: the profile is cut short or lies about its lengths.
    if (!(error instanceof RangeError)) throw error
  }
  return unreadableProfile
}
