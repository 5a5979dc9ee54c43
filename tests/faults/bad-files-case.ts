// One line of the table of bad files: what is handed over, and what must come of it.
import type { PhotoFormat, Shot } from '../../shared/job/tray-schema.ts'

export type Expected =
  /** The one line a person reads. */
  | { refused: RegExp }
  /** Goes in, as what it is. */
  | { added: PhotoFormat; shot?: Partial<Shot> }

export type BadFile = {
  what: string
  /** Name it is handed over under; by default made from `what`. */
  name?: string
  bytes: Uint8Array
  expected: Expected
}

export const refused = (what: string, bytes: Uint8Array, line: RegExp, name?: string): BadFile => ({
  what,
  bytes,
  expected: { refused: line },
  ...(name === undefined ? {} : { name }),
})

export const added = (
  what: string,
  bytes: Uint8Array,
  format: PhotoFormat,
  shot: Partial<Shot> = {},
  name?: string,
): BadFile => ({ what, bytes, expected: { added: format, shot }, ...(name === undefined ? {} : { name }) })

export const latin1 = (text: string): Buffer => Buffer.from(text, 'latin1')
