// The one door to the disk: nothing else under services/ writes. Small operations, so that tests can log, fail or undo each.
import { constants } from 'node:fs'
import { link, lstat, mkdir, open, readdir, readFile, rename, rm, unlink } from 'node:fs/promises'
import { codeOf } from './disk-fault.ts'

/** Tells one content of a file from the next: a file that was replaced has another number, even within one clock tick. */
export type FileStamp = { mtimeMs: number; size: number; ino: number }

export type OpenedForWriting = {
  write: (bytes: Uint8Array) => Promise<void>
  /** Forces the content to the disk. */
  sync: () => Promise<void>
  close: () => Promise<void>
}

export type Disk = {
  read: (path: string) => Promise<Buffer>
  /** Names in a folder, sorted. */
  list: (folder: string) => Promise<string[]>
  /** Null when there is no such plain file. */
  stamp: (path: string) => Promise<FileStamp | null>
  isFolder: (path: string) => Promise<boolean>
  /** Creates a file that must not exist yet. */
  create: (path: string) => Promise<OpenedForWriting>
  rename: (from: string, to: string) => Promise<void>
  /** A second name for the same file; fails where the name is taken. */
  link: (from: string, to: string) => Promise<void>
  /** One folder; false when it was there already. */
  makeFolder: (path: string) => Promise<boolean>
  /** Forces new, renamed and removed names of a folder to the disk. */
  syncFolder: (path: string) => Promise<void>
  remove: (path: string) => Promise<void>
  removeTree: (path: string) => Promise<void>
}

/** Errors by which a file system says that it has no such flush: then nothing more can be done. */
const noFlush = new Set(['ENOTSUP', 'EOPNOTSUPP', 'EINVAL', 'ENOTTY', 'EISDIR'])
const noFolderFlush = new Set([...noFlush, 'EPERM'])
const isAbsent = (error: unknown): boolean => codeOf(error) === 'ENOENT' || codeOf(error) === 'ENOTDIR'

const retryable = new Set(['EPERM', 'EBUSY', 'EACCES'])
const onWindows = process.platform === 'win32'

/** On Windows another program (a virus scanner) may hold a file for a moment. */
async function patiently(work: () => Promise<void>): Promise<void> {
  for (let attempt = 0; ; attempt += 1) {
    try {
      return await work()
    } catch (error) {
      if (!onWindows || attempt >= 9 || !retryable.has(String(codeOf(error)))) throw error
      await new Promise(resolve => setTimeout(resolve, 20 * (attempt + 1)))
    }
  }
}

async function flush(sync: () => Promise<void>, missing: ReadonlySet<string>): Promise<void> {
  try {
    await sync()
  } catch (error) {
    if (!missing.has(String(codeOf(error)))) throw error
  }
}

export const realDisk: Disk = {
  read: path => readFile(path),
  list: async folder => (await readdir(folder)).toSorted(),
  async stamp(path) {
    try {
      const found = await lstat(path)
      return found.isFile() ? { mtimeMs: found.mtimeMs, size: found.size, ino: found.ino } : null
    } catch (error) {
      if (isAbsent(error)) return null
      throw error
    }
  },
  async isFolder(path) {
    try {
      return (await lstat(path)).isDirectory()
    } catch (error) {
      if (isAbsent(error)) return false
      throw error
    }
  },
  async create(path) {
    const handle = await open(path, 'wx')
    return {
      write: async bytes => {
        await handle.writeFile(bytes)
      },
      sync: () => flush(() => handle.sync(), noFlush),
      close: () => handle.close(),
    }
  },
  rename: (from, to) => patiently(() => rename(from, to)),
  link: (from, to) => link(from, to),
  async makeFolder(path) {
    try {
      await mkdir(path)
      return true
    } catch (error) {
      if (codeOf(error) === 'EEXIST') return false
      throw error
    }
  },
  async syncFolder(path) {
    // Windows has no flush of a folder.
    if (onWindows) return
    const handle = await open(path, constants.O_RDONLY)
    try {
      await flush(() => handle.sync(), noFolderFlush)
    } finally {
      await handle.close()
    }
  },
  remove: path => patiently(() => unlink(path)),
  removeTree: path => rm(path, { recursive: true, force: true }),
}
