// catalogue.json: says that this folder is a catalogue and of which version, before anything in it is touched.
import { join } from 'node:path'
import { z } from 'zod'
import { FaultError } from '../fault.ts'
import { sealed } from './content-hash.ts'
import type { Disk } from './disk.ts'
import { replaceFile } from './durable-file.ts'
import { readSmallDocument, smallDocumentVersion } from './small-documents.ts'

export const markerName = 'catalogue.json'
export const markerSchema = z.strictObject({ madeBy: z.string() })

/**
 * Throws NEWER_VERSION for a catalogue of a newer kind. True when there is no marker that can be read: a lost or
 * damaged marker keeps nobody from their jobs, which carry versions of their own.
 */
export async function markerIsMissing(disk: Disk, folder: string): Promise<boolean> {
  const path = join(folder, markerName)
  if ((await disk.stamp(path)) === null) return true
  try {
    readSmallDocument(await disk.read(path), markerName, markerSchema)
    return false
  } catch (error) {
    if (error instanceof FaultError && error.code === 'DAMAGED') return true
    throw error
  }
}

export async function writeMarker(disk: Disk, folder: string, appVersion: string): Promise<void> {
  const value = { madeBy: `Plugtray ${appVersion}` }
  const marker = sealed({ schemaVersion: smallDocumentVersion, rev: 1, value })
  await replaceFile(disk, join(folder, markerName), Buffer.from(JSON.stringify(marker)))
}
