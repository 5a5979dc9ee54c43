// A file that at most one living process holds. Taking it over from a dead one is itself guarded by such a file.
import { createHash } from 'node:crypto'
import type { Disk } from './disk.ts'
import { codeOf } from './disk-fault.ts'
import { temporaryName, writeSynced } from './durable-file.ts'

export type Claim = {
  disk: Disk
  path: string
  /** What the holder writes; different for every process. */
  mine: Uint8Array
  /** `ageMs` by the file system's own clock. */
  isGone: (theirs: Uint8Array, ageMs: number) => boolean
}

export type Claimed = { won: true } | { won: false; theirs: Uint8Array }

const noLinks = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK'])
const tries = 100
const pauseMs = 20

const readIfThere = async (disk: Disk, path: string): Promise<Buffer | null> => {
  try {
    return await disk.read(path)
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null
    throw error
  }
}

/** Gives `from` the name `path` unless that is taken. */
async function nameIt(claim: Claim, from: string): Promise<boolean> {
  const { disk, path, mine } = claim
  try {
    await disk.link(from, path)
    return true
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false
    if (!noLinks.has(String(codeOf(error)))) throw error
  }
  // A file system without links: the name first, the content after it. Whoever reads in between sees a young, torn lock.
  try {
    await writeSynced(disk, path, mine)
    return true
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false
    throw error
  }
}

/**
 * Takes the file, or gives the bytes of the one who has it. Only the holder of `<path>.after-<hash of the dead one's
 * bytes>` may put something in the place of a dead holder's file, and looks again before it does: so two cannot both win.
 */
export async function take(claim: Claim): Promise<Claimed> {
  const { disk, path, mine, isGone } = claim
  // Written whole under a name of its own first: nobody ever reads half of it.
  const own = temporaryName(path)
  await writeSynced(disk, own, mine)
  try {
    const written = await disk.stamp(own)
    let theirs: Buffer | null = null
    for (let attempt = 0; attempt < tries; attempt += 1) {
      if (await nameIt(claim, own)) return { won: true }
      theirs = await readIfThere(disk, path)
      const stamp = await disk.stamp(path)
      if (theirs === null || stamp === null) continue
      if (!isGone(theirs, (written?.mtimeMs ?? 0) - stamp.mtimeMs)) return { won: false, theirs }
      const guard = `${path}.after-${createHash('sha256').update(theirs).digest('hex').slice(0, 16)}`
      if (!(await take({ ...claim, path: guard })).won) {
        await new Promise(resolve => setTimeout(resolve, pauseMs))
        continue
      }
      try {
        if ((await readIfThere(disk, path))?.equals(theirs) === true) {
          await disk.rename(own, path)
          return { won: true }
        }
      } finally {
        await disk.remove(guard).catch(() => undefined)
      }
    }
    return { won: false, theirs: theirs ?? Buffer.alloc(0) }
  } finally {
    // Gone already where it was renamed into place.
    await disk.remove(own).catch(() => undefined)
  }
}
