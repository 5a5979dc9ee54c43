// Settings and the shop's own layouts: small documents beside the jobs, each a lowdb file with a content hash.
import { join } from 'node:path'
import { Low } from 'lowdb'
import { z } from 'zod'
import { defaultSettings, type Settings, settingsSchema } from '../../../shared/contract/settings-schema.ts'
import { type Layout, layoutSchema } from '../../../shared/engine/layout-schema.ts'
import { FaultError } from '../fault.ts'
import type { Disk } from './disk.ts'
import { contentHash } from './job-file.ts'
import { DurableJsonAdapter } from './json-adapter.ts'

export type SmallDocument<T> = {
  get: () => T
  /** Durable when it returns. */
  set: (value: T) => Promise<T>
  /** Set when the stored file could not be used and the default took its place; the file stays until the next change. */
  problem: FaultError | null
}

const schemaVersion = 1

async function openSmall<T>(
  disk: Disk,
  folder: string,
  name: string,
  schema: z.ZodType<T>,
  fallback: T,
  writable: () => void,
): Promise<SmallDocument<T>> {
  const envelope = z.strictObject({
    schemaVersion: z.literal(schemaVersion),
    rev: z.int(),
    hash: z.string(),
    value: schema,
  })
  type Stored = { schemaVersion: 1; rev: number; hash: string; value: T }
  const adapter = new DurableJsonAdapter<Stored>({
    disk,
    path: join(folder, name),
    name,
    decode(bytes) {
      try {
        const stored = envelope.parse(JSON.parse(Buffer.from(bytes).toString('utf8')))
        if (stored.hash !== contentHash(stored)) throw new Error('hash')
        return stored
      } catch {
        throw new FaultError('DAMAGED', {
          what: 'The file is damaged or was written by a newer version.',
          where: name,
          hint: 'Defaults are used; the file stays as it is until you change something here.',
        })
      }
    },
    encode: stored => Buffer.from(JSON.stringify(stored)),
  })
  const stamp = (value: T, rev: number): Stored => {
    const content = { schemaVersion: 1 as const, rev, value }
    return { ...content, hash: contentHash(content) }
  }
  const low = new Low<Stored>(adapter, stamp(fallback, 0))
  let problem: FaultError | null = null
  try {
    await low.read()
  } catch (error) {
    if (!(error instanceof FaultError)) throw error
    problem = error
  }
  return {
    get: () => low.data.value,
    async set(value) {
      writable()
      const last = low.data
      low.data = stamp(schema.parse(value), last.rev + 1)
      try {
        await low.write()
      } catch (error) {
        low.data = last
        throw error
      }
      return low.data.value
    },
    problem,
  }
}

export const openSettings = (
  disk: Disk,
  folder: string,
  writable: () => void,
): Promise<SmallDocument<Settings>> =>
  openSmall(disk, folder, 'settings.json', settingsSchema, defaultSettings, writable)

export const openOwnLayouts = (
  disk: Disk,
  folder: string,
  writable: () => void,
): Promise<SmallDocument<Layout[]>> =>
  openSmall(disk, folder, 'layouts.json', z.array(layoutSchema), [], writable)
