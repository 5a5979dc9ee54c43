// The first lines of a recording as text, or why it cannot be one.
import { FaultError } from '../fault.ts'

const bad = (name: string, what: string, hint: string) =>
  new FaultError('BAD_INPUT', { what, where: name, hint })
const saveAgain = 'Export the recording as CSV text (UTF-8), one sample a line.'

/**
 * Lines of the beginning, the last one left out if it may be cut; line ends and a byte order mark removed.
 * Throws BAD_INPUT for what is not text.
 */
export function beginningLines(bytes: Uint8Array, size: number, name: string): string[] {
  const [first, second, third] = bytes
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff))
    throw bad(name, 'The file is written in UTF-16.', saveAgain)
  if (first === 0x50 && second === 0x4b)
    throw bad(name, 'This is a workbook or an archive, not text.', saveAgain)
  if (bytes.includes(0)) throw bad(name, 'This is not a text file.', saveAgain)
  const marked = first === 0xef && second === 0xbb && third === 0xbf
  const lines = textOf(marked ? bytes.subarray(3) : bytes).split('\n')
  if (bytes.length < size) lines.pop()
  if (lines.length === 0) throw bad(name, 'The file has no lines.', saveAgain)
  return lines.map(line => line.replace(/\r$/, ''))
}

/** Older devices write one byte a letter; their µ and Ω are all that differs. */
function textOf(bytes: Uint8Array): string {
  const text = new TextDecoder().decode(bytes)
  return text.includes('\ufffd') ? new TextDecoder('windows-1252').decode(bytes) : text
}
