// One writer a catalogue: a lock file that says who holds it, taken over only when its holder is certainly gone.
import { join } from 'node:path'
import { type Claim, take } from './claim.ts'
import type { Disk } from './disk.ts'
import { codeOf } from './disk-fault.ts'
import { replaceFile } from './durable-file.ts'
import { type Holder, holderSchema, inOneSentence, isGone, thisProcess } from './holder.ts'

export type Lock = {
  /** Null while the lock is still ours; else in one sentence who has it now. Never ours again after that. */
  lost: () => Promise<string | null>
  release: () => Promise<void>
}
export type LockAttempt = { lock: Lock } | { heldBy: string }

const refreshMs = 5 * 60_000
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
  const claimed = await take(claim)
  return claimed.won ? { lock: held(claim) } : { heldBy: inOneSentence(holderIn(claimed.theirs)) }
}

/** Keeps the lock fresh for other machines until it is released or lost. */
function held(claim: Claim): Lock {
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
      if ((await lost()) !== null) return
      over = 'The catalogue was closed.'
      await disk.remove(path).catch(() => undefined)
    },
  }
}
