// Lists the files of a folder for an import: bounded in depth and number, never through a link, never out of the folder.
import type { Dirent } from 'node:fs'
import { opendir, realpath } from 'node:fs/promises'
import { join } from 'node:path'
import { compareFileNames } from '../../../shared/job/capture-order.ts'
import { FaultError } from '../fault.ts'

export const maxDepth = 8
export const maxEntries = 5000

export type FolderListing = {
  /** Regular files, whatever they hold; `name` is the path inside the folder with forward slashes. Naturally sorted. */
  files: { path: string; name: string }[]
  /** What was passed over, counted. */
  skipped: { hidden: number; links: number; devices: number; tooDeep: number; unreadable: number }
}

/** Throws FaultError when the folder itself cannot be read or holds more than {@link maxEntries} entries. */
export async function listFolder(folder: string, signal?: AbortSignal): Promise<FolderListing> {
  const skipped = { hidden: 0, links: 0, devices: 0, tooDeep: 0, unreadable: 0 }
  const files: FolderListing['files'] = []
  let entries = 0

  function take(entry: Dirent, parent: string, inside: string, depth: number): Promise<void> | undefined {
    const name = inside === '' ? entry.name : `${inside}/${entry.name}`
    if (entry.name.startsWith('.')) skipped.hidden++
    else if (entry.isSymbolicLink()) skipped.links++
    else if (entry.isFile()) files.push({ path: join(parent, entry.name), name })
    else if (!entry.isDirectory()) skipped.devices++
    else if (depth === maxDepth) skipped.tooDeep++
    else return walk(join(parent, entry.name), name, depth + 1)
    return undefined
  }

  async function walk(path: string, inside: string, depth: number): Promise<void> {
    let listing: Awaited<ReturnType<typeof opendir>>
    try {
      listing = await opendir(path)
    } catch (error) {
      if (inside === '') throw unreadableFolder(folder, error)
      skipped.unreadable++
      return
    }
    for await (const entry of listing) {
      signal?.throwIfAborted()
      if (++entries > maxEntries) throw tooMany(folder)
      await take(entry, path, inside, depth)
    }
  }

  const root = await realpath(folder).catch((error: unknown) => {
    throw unreadableFolder(folder, error)
  })
  await walk(root, '', 1)
  files.sort((a, b) => compareFileNames(a.name, b.name))
  return { files, skipped }
}

function unreadableFolder(folder: string, error: unknown): FaultError {
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  if (code === 'ENOENT')
    return new FaultError('NOT_FOUND', {
      what: 'There is no such folder.',
      where: folder,
      hint: 'Check the path.',
    })
  if (code === 'ENOTDIR')
    return new FaultError('REFUSED', {
      what: 'This is a file, not a folder.',
      where: folder,
      hint: 'Name the folder it is in.',
    })
  return new FaultError('REFUSED', {
    what: 'The folder cannot be read.',
    where: folder,
    hint: 'Check its permissions.',
  })
}

function tooMany(folder: string): FaultError {
  return new FaultError('REFUSED', {
    what: `The folder holds more than ${maxEntries.toLocaleString('en-US')} entries; nothing was taken in.`,
    where: folder,
    hint: 'Import one job at a time, from a folder with its photos only.',
  })
}
