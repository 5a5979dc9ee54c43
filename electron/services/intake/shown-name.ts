// A file name as it may be shown and kept: one spelling, nothing invisible, bounded. The store's own names are hashes.

const maxBytes = 255
const maxExtension = 16
// Control, format (bidi and zero-width), private-use and unassigned characters, lone surrogates, and the two Unicode line ends.
const invisible = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Co}\p{Cn}\p{Cs}]/gu
const bytesOf = (text: string): number => Buffer.byteLength(text, 'utf8')

const codeOf = (letter: string): string =>
  (letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')

/** Cuts by whole characters, keeping a short extension: "very long na….jpg". */
function cut(name: string): string {
  if (bytesOf(name) <= maxBytes) return name
  const dot = name.lastIndexOf('.')
  const extension = dot > 0 && bytesOf(name.slice(dot)) <= maxExtension ? name.slice(dot) : ''
  const room = maxBytes - bytesOf(extension) - bytesOf('…')
  let kept = ''
  let used = 0
  for (const { segment } of new Intl.Segmenter('en').segment(name)) {
    used += bytesOf(segment)
    if (used > room) break
    kept += segment
  }
  return `${kept}…${extension}`
}

/** NFC, invisible characters spelled out as `<U+202E>`, at most 255 bytes of UTF-8, never empty. */
export function shownName(name: string): string {
  const whole = name.normalize('NFC')
  const visible = whole.replace(invisible, letter => `<U+${codeOf(letter)}>`)
  return visible.trim() === '' ? 'unnamed' : cut(visible)
}
