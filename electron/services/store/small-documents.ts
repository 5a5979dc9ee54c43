// Settings and the shop's own layouts: small documents beside the jobs, each a lowdb file with revision and content hash.
import { createHash } from 'node:crypto'
import { join } from 'node:path'
import { z } from 'zod'
import { defaultSettings, type Settings, settingsSchema } from '../../../shared/contract/settings-schema.ts'
import { type Layout, layoutSchema } from '../../../shared/engine/layout-schema.ts'
import { FaultError } from '../fault.ts'
import { openSealed, sealed } from './content-hash.ts'
import type { Disk } from './disk.ts'
import { onDisk } from './disk-fault.ts'
import type { Doubts } from './doubts.ts'
import { makeFolders, replaceFile } from './durable-file.ts'
import { storedDocument } from './stored-document.ts'
import { turns } from './turns.ts'

export type SmallDocument<T> = {
  /** Throws the fault of the file where nothing else may stand in for its content. */
  get: () => T
  /** Durable when it returns. */
  set: (value: T) => Promise<T>
  /** Set when the stored file could not be used; the file stays as it is. */
  problem: FaultError | null
}

export const smallDocumentVersion = 1

type Stored<T> = { schemaVersion: 1; rev: number; hash: string; value: T }

/** Verifies the bytes of a small document. Throws DAMAGED or NEWER_VERSION. */
export function readSmallDocument<T>(bytes: Uint8Array, name: string, schema: z.ZodType<T>): Stored<T> {
  const fault = (code: 'DAMAGED' | 'NEWER_VERSION', what: string, hint: string) =>
    new FaultError(code, { what, where: name, hint })
  const restore = 'Restore it from a backup, or move it out of the catalogue folder to begin anew.'
  const opened = openSealed(bytes, 'schemaVersion', smallDocumentVersion)
  if ('newer' in opened)
    throw fault(
      'NEWER_VERSION',
      'This file was written by a newer version of Plugtray.',
      'Update Plugtray to change it. Nothing was changed.',
    )
  if ('fault' in opened) throw fault('DAMAGED', opened.fault, restore)
  const envelope = z.strictObject({
    schemaVersion: z.literal(smallDocumentVersion),
    rev: z.int(),
    hash: z.string(),
    value: schema,
  })
  const parsed = envelope.safeParse(opened.document)
  if (!parsed.success) throw fault('DAMAGED', 'The file holds what does not belong there.', restore)
  return parsed.data
}

type Place = { disk: Disk; folder: string; writable: () => Promise<void>; doubts: Doubts }
type Kind<T> = { name: string; schema: z.ZodType<T>; fallback: T }

async function openSmall<T>({ disk, folder, writable, doubts }: Place, kind: Kind<T>, standIn: boolean) {
  const { name, schema, fallback } = kind
  const path = join(folder, name)
  const document = storedDocument<Stored<T>>({
    disk,
    path,
    name,
    decode: bytes => readSmallDocument(bytes, name, schema),
    encode: stored => Buffer.from(JSON.stringify(stored)),
  })
  const inTurn = turns()
  let problem: FaultError | null = null
  try {
    await document.read()
  } catch (error) {
    if (!(error instanceof FaultError)) throw error
    problem = error
  }
  /** What cannot be read is kept aside before anything takes its place. */
  const setAside = () =>
    onDisk(name, async () => {
      const bytes = await disk.read(path)
      const kept = join(folder, 'damaged', `${createHash('sha256').update(bytes).digest('hex')}-${name}`)
      await makeFolders(disk, join(folder, 'damaged'))
      if ((await disk.stamp(kept)) === null) await replaceFile(disk, kept, bytes)
    })
  return {
    get() {
      if (problem && !standIn) throw problem
      return document.current()?.value ?? fallback
    },
    async set(value: T) {
      // In the order the changes were asked for.
      await inTurn(name, writable)
      if (problem && (!standIn || problem.code !== 'DAMAGED')) throw problem
      if (problem) await setAside()
      await document.settle()
      const rev = (document.current()?.rev ?? 0) + 1
      const stored: Stored<T> = sealed({
        schemaVersion: smallDocumentVersion,
        rev,
        value: schema.parse(value),
      })
      try {
        await document.write(stored)
      } catch (error) {
        doubts.add(name, document.settle)
        throw error
      }
      problem = null
      return stored.value
    },
    get problem() {
      return problem
    },
  }
}

export const settingsKind: Kind<Settings> = {
  name: 'settings.json',
  schema: settingsSchema,
  fallback: defaultSettings,
}
export const ownLayoutsKind: Kind<Layout[]> = {
  name: 'layouts.json',
  schema: z.array(layoutSchema),
  fallback: [],
}

/** The app must start: defaults stand in for settings that cannot be read. */
export const openSettings = (place: Place): Promise<SmallDocument<Settings>> =>
  openSmall(place, settingsKind, true)

/** Nothing stands in for layouts that cannot be read: they are somebody's work. */
export const openOwnLayouts = (place: Place): Promise<SmallDocument<Layout[]>> =>
  openSmall(place, ownLayoutsKind, false)
