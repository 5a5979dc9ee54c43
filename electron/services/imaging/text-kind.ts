// Names what a text file is: drawing, web page, data, plain text. For a refusal that says what was handed over.

const controlCharacter = /\p{Cc}/u
const layout = /[\t\n\v\f\r]/g

function decode(bytes: Uint8Array): string | null {
  const head = bytes.subarray(0, 16 * 1024)
  const utf16 = (head[0] === 0xff && head[1] === 0xfe) || (head[0] === 0xfe && head[1] === 0xff)
  if (utf16) return new TextDecoder(head[0] === 0xff ? 'utf-16le' : 'utf-16be').decode(head)
  const text = new TextDecoder('utf-8').decode(head)
  // A text may hold a few stray latin-1 letters, a binary file holds control characters.
  const strange = text.split('\ufffd').length - 1
  return controlCharacter.test(text.replace(layout, '')) || strange > text.length / 50 ? null : text
}

/** Null when it is not text. */
export function textKind(bytes: Uint8Array): string | null {
  const text = decode(bytes)?.trimStart()
  if (text === undefined) return null
  if (text === '') return 'only white space'
  if (/<svg[\s>]/i.test(text)) return 'a drawing (SVG)'
  if (/^<!doctype html|<html[\s>]/i.test(text)) return 'a web page (HTML)'
  if (text.startsWith('<?xml')) return 'an XML file'
  if (/^[[{]/.test(text)) return 'a JSON or other text file'
  return 'a text file'
}
