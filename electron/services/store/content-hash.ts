// The hash that every stored document carries: SHA-256 over its canonical JSON without the hash itself.
import { createHash } from 'node:crypto'
import { canonicalJson } from '../../../shared/job/canonical.ts'
import { checkShape } from '../../../shared/job/document-shape.ts'

export type StoredDocument = { readonly [field: string]: unknown }

/** 64 hexadecimal digits. The field `hash` of the document is left out of what is hashed. */
export function contentHash(document: StoredDocument): string {
  const content = Object.fromEntries(Object.entries(document).filter(([key]) => key !== 'hash'))
  return createHash('sha256').update(canonicalJson(content)).digest('hex')
}

/** The document with the hash of its content. */
export const sealed = <T extends StoredDocument>(document: T): T & { hash: string } => ({
  ...document,
  hash: contentHash(document),
})

export type Opened = { document: StoredDocument } | { newer: number } | { fault: string }

function parsed(bytes: Uint8Array): unknown {
  try {
    // Not lenient: bytes that are no UTF-8 are damage, not question marks.
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes))
  } catch {
    return undefined
  }
}

/**
 * The document in `bytes` when its hash is right; else in words what is wrong with the file. A version above `current`
 * in the field `version` is told apart before anything else of the file is judged.
 */
export function openSealed(bytes: Uint8Array, version: string, current: number): Opened {
  if (bytes.length === 0) return { fault: 'The file is empty.' }
  const raw = parsed(bytes)
  if (raw === undefined) return { fault: 'The file is torn or altered: it is not whole JSON.' }
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw))
    return { fault: 'The file does not hold a document.' }
  const document: StoredDocument = Object.fromEntries(Object.entries(raw))
  const written = document[version]
  if (typeof written === 'number' && written > current) return { newer: written }
  const shape = checkShape(document)
  if (!shape.ok) return { fault: shape.refusal.what }
  if (typeof document['hash'] !== 'string' || typeof document['rev'] !== 'number')
    return { fault: 'The file lacks its revision or content hash.' }
  if (document['hash'] !== contentHash(document))
    return { fault: 'The content of the file does not match its hash: it was altered or damaged.' }
  return { document }
}
