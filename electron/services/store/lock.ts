// One writer a catalogue: a lock file that says who holds it, taken over only when its holder is certainly gone.
import { readFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { z } from 'zod'
import type { Disk } from './disk.ts'

const holderSchema = z.strictObject({
  pid: z.int(),
  /** Start of the process in clock ticks since boot, where the system tells: a pid alone may be used again. */
  started: z.string(),
  boot: z.string(),
  host: z.string(),
  version: z.string(),
  at: z.string(),
})
type Holder = z.infer<typeof holderSchema>

export type Lock = { release: () => Promise<void> }
export type LockAttempt = { lock: Lock } | { heldBy: string }

const staleAfterMs = 30 * 60_000
const guardStaleAfterMs = 10_000
const refreshMs = 5 * 60_000

const readText = (path: string): string => {
  try {
    return readFileSync(path, 'utf8').trim()
  } catch {
    // Only Linux has these files; elsewhere the time decides.
    return ''
  }
}

const startOf = (pid: number): string =>
  readText(`/proc/${pid}/stat`).split(') ').at(-1)?.split(' ')[19] ?? ''

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    // Not permitted to signal it: somebody else's process, but alive.
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}

function isGone(holder: Holder, now: number): boolean {
  if (holder.host === hostname()) {
    if (holder.boot !== readText('/proc/sys/kernel/random/boot_id')) return true
    if (!isAlive(holder.pid)) return true
    return holder.started !== '' && startOf(holder.pid) !== holder.started
  }
  return now - Date.parse(holder.at) > staleAfterMs
}

const sentence = (holder: Holder): string =>
  `Plugtray ${holder.version} on ${holder.host} (process ${holder.pid}) has had this catalogue open since ${holder.at.slice(0, 16).replace('T', ' ')} UTC. Close it there to make changes here.`

const unreadable = 'Another Plugtray seems to be opening this catalogue. Try again in a moment.'

/** Takes the lock of a catalogue folder, or says in one sentence who has it. */
export async function takeLock(
  disk: Disk,
  folder: string,
  version: string,
  now = () => new Date(),
): Promise<LockAttempt> {
  const path = join(folder, 'lock')
  const mine = (): Holder => ({
    pid: process.pid,
    started: startOf(process.pid),
    boot: readText('/proc/sys/kernel/random/boot_id'),
    host: hostname(),
    version,
    at: now().toISOString(),
  })

  const create = async (): Promise<boolean> => {
    // Written whole under a name of its own, then given the lock's name: nobody ever reads half a lock.
    const own = `${path}.${process.pid}.${process.hrtime.bigint().toString(36)}`
    const file = await disk.create(own)
    try {
      await file.write(Buffer.from(JSON.stringify(mine())))
    } finally {
      await file.close()
    }
    try {
      await disk.link(own, path)
      return true
    } catch (error) {
      if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false
      throw error
    } finally {
      await disk.remove(own)
    }
  }
  const readHolder = async (): Promise<Holder | null> => {
    if ((await disk.stamp(path)) === null) return null
    const bytes = await disk.read(path).catch(() => Buffer.alloc(0))
    try {
      return holderSchema.parse(JSON.parse(bytes.toString('utf8')))
    } catch {
      // Torn or foreign: judged by its age alone.
      const stamp = await disk.stamp(path)
      return (
        stamp && {
          pid: 0,
          started: '',
          boot: '',
          host: '?',
          version: '?',
          at: new Date(stamp.mtimeMs).toISOString(),
        }
      )
    }
  }

  if (await create()) return { lock: held(disk, path, mine) }
  const holder = await readHolder()
  if (holder && !isGone(holder, now().getTime())) return { heldBy: sentence(holder) }

  // Only one process at a time may clear a stale lock away, and it looks again before it does.
  const guard = `${path}.takeover`
  const guardStamp = await disk.stamp(guard)
  if (guardStamp && now().getTime() - guardStamp.mtimeMs > guardStaleAfterMs)
    await disk.remove(guard).catch(() => undefined)
  try {
    await (await disk.create(guard)).close()
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return { heldBy: unreadable }
    throw error
  }
  try {
    const again = await readHolder()
    if (again && !isGone(again, now().getTime())) return { heldBy: sentence(again) }
    if (again) await disk.remove(path)
    if (await create()) return { lock: held(disk, path, mine) }
    const winner = await readHolder()
    return { heldBy: winner ? sentence(winner) : unreadable }
  } finally {
    await disk.remove(guard).catch(() => undefined)
  }
}

/** Keeps the lock fresh for other machines until it is released. */
function held(disk: Disk, path: string, mine: () => Holder): Lock {
  let released = false
  const refresh = async () => {
    const temporary = `${path}.${process.pid}.refresh`
    const file = await disk.create(temporary)
    await file.write(Buffer.from(JSON.stringify(mine())))
    await file.close()
    if (!released) await disk.rename(temporary, path)
    else await disk.remove(temporary)
  }
  // A refresh that fails (disk gone for a moment) is tried again at the next turn.
  const timer = setInterval(() => void refresh().catch(() => undefined), refreshMs)
  timer.unref()
  return {
    async release() {
      if (released) return
      released = true
      clearInterval(timer)
      await disk.remove(path).catch(() => undefined)
    },
  }
}
