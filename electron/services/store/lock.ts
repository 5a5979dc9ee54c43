// One writer a catalogue: a lock file that says who holds it, taken over only when its holder is certainly gone.
import { join } from 'node:path'
import { type Claim, take } from './claim.ts'
import type { Disk } from './disk.ts'
import { codeOf } from './disk-fault.ts'
import { replaceFile } from './durable-file.ts'
import { type Holder, holderSchema, inOneSentence, isGone, openHere, thisProcess } from './holder.ts'

export type Lock = {
  /** Null while the lock is still ours; else in one sentence who has it now. Never ours again after that. */
  lost: () => Promise<string | null>
  release: () => Promise<void>
}
export type LockAttempt = { lock: Lock } | { heldBy: string }

const refreshMs = 5 * 60_000
/** A file that is still being written is whole long before. */
const tornAfterMs = 60_000
export const lockName = 'lock'

function holderIn(bytes: Uint8Array): Holder | null {
  try {
    return holderSchema.parse(JSON.parse(Buffer.from(bytes).toString('utf8')))
  } catch {
    // Torn or foreign: judged by its age alone.
    return null
  }
}

/** Takes the lock of a catalogue folder, or says in one sentence who has it. Throws errors of the disk as they come. */
export async function takeLock(
  disk: Disk,
  folder: string,
  version: string,
  now = () => new Date(),
): Promise<LockAttempt> {
  const path = join(folder, lockName)
  const here = thisProcess(version, now())
  const mine = Buffer.from(JSON.stringify(here))
  const claim: Claim = {
    disk,
    path,
    mine,
    isGone: (theirs, ageMs) => isGone(holderIn(theirs), here, ageMs),
  }
  openHere.add(here.opening)
  const done = () => openHere.delete(here.opening)
  try {
    const claimed = await take(claim)
    if (claimed.won) return { lock: held(claim, done) }
    done()
    return { heldBy: inOneSentence(holderIn(claimed.theirs)) }
  } catch (error) {
    done()
    throw error
  }
}

/** Files that taking the lock leaves for a moment. */
export const isOfLock = (name: string): boolean => name.startsWith(`${lockName}.`)

/** Removes what processes left that were killed while they asked for the lock. Those of the living stay. */
export async function sweepLock(disk: Disk, folder: string): Promise<void> {
  const here = thisProcess('', new Date())
  for (const name of (await disk.list(folder)).filter(isOfLock)) {
    const path = join(folder, name)
    const stamp = await disk.stamp(path)
    const bytes = await disk.read(path).catch(() => null)
    if (stamp === null || bytes === null) continue
    const holder = holderIn(bytes)
    const ageMs = Date.parse(here.at) - stamp.mtimeMs
    if (holder === null ? ageMs > tornAfterMs : isGone(holder, here, ageMs))
      await disk.remove(path).catch(() => undefined)
  }
}

/** Keeps the lock fresh for other machines until it is released or lost. */
function held(claim: Claim, done: () => void): Lock {
  const { disk, path, mine } = claim
  let over: string | null = null

  /** Null where it cannot be told just now: then the change fails by itself, or the lock is looked at again. */
  const inPlace = async (): Promise<Uint8Array | null> => {
    try {
      return await disk.read(path)
    } catch (error) {
      if (codeOf(error) !== 'ENOENT') return null
    }
    // Somebody removed it: it is asked for again as if for the first time.
    const again = await take(claim).catch(() => null)
    return again === null || again.won ? null : again.theirs
  }
  const lost = async (): Promise<string | null> => {
    if (over !== null) return over
    const bytes = await inPlace()
    if (bytes !== null && Buffer.compare(bytes, mine) !== 0) over = inOneSentence(holderIn(bytes))
    return over
  }
  const refresh = async () => {
    if ((await lost()) === null) await replaceFile(disk, path, mine)
  }
  // A refresh that fails (disk gone for a moment) is tried again at the next turn.
  const timer = setInterval(() => void refresh().catch(() => undefined), refreshMs)
  timer.unref()
  return {
    lost,
    async release() {
      clearInterval(timer)
      done()
      if ((await lost()) !== null) return
      over = 'The catalogue was closed.'
      await disk.remove(path).catch(() => undefined)
    },
  }
}
