// Who holds a catalogue: a process told apart from every other one, and whether it is certainly gone.
import { randomBytes } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { z } from 'zod'

export const holderSchema = z.strictObject({
  pid: z.int(),
  /** Tells the openings of one process apart. */
  opening: z.string(),
  /** Start of the process in clock ticks since boot, where the system tells: a pid alone may be used again. */
  started: z.string(),
  boot: z.string(),
  host: z.string(),
  /** Tells two machines of the same name apart, where the system has such a number. */
  machine: z.string(),
  version: z.string(),
  /** Since when, ISO 8601. */
  at: z.string(),
})
export type Holder = z.infer<typeof holderSchema>

/** On another machine only the time tells: a holder refreshes its lock far more often than this. */
export const staleAfterMs = 30 * 60_000

const readText = (path: string): string => {
  try {
    return readFileSync(path, 'utf8').trim()
  } catch {
    // Only Linux has these files.
    return ''
  }
}

/** State letter and start time of a process; empty where the system does not tell or there is no such process. */
function processStat(pid: number): { state: string; started: string } {
  // The name in brackets may hold anything, even brackets: fields are counted from the last one.
  const fields = readText(`/proc/${pid}/stat`).split(') ').at(-1)?.split(' ') ?? []
  return { state: fields[0] ?? '', started: fields[19] ?? '' }
}

export const thisProcess = (version: string, at: Date): Holder => ({
  pid: process.pid,
  opening: randomBytes(8).toString('hex'),
  started: processStat(process.pid).started,
  boot: readText('/proc/sys/kernel/random/boot_id'),
  host: hostname(),
  machine: readText('/etc/machine-id'),
  version,
  at: at.toISOString(),
})

/** Openings of this process that hold something, or are just asking for it. */
export const openHere = new Set<string>()

function isAlive({ pid, started, opening }: Holder): boolean {
  try {
    process.kill(pid, 0)
  } catch (error) {
    // Not permitted to signal it: somebody else's process, but alive.
    if (!(error instanceof Error && 'code' in error && error.code === 'EPERM')) return false
  }
  const now = processStat(pid)
  // Left behind by this very process, on a disk that would not let it be removed.
  if (pid === process.pid && now.started === started) return openHere.has(opening)
  // A killed process stays in the table until its parent has looked; it writes nothing any more.
  if (now.state === 'Z' || now.state === 'X') return false
  return started === '' || now.started === '' || now.started === started
}

/** `ageMs`: time since the lock was last refreshed. Null stands for a lock that cannot be read. */
export function isGone(holder: Holder | null, here: Holder, ageMs: number): boolean {
  if (holder !== null && holder.host === here.host && holder.machine === here.machine)
    return holder.boot !== here.boot || !isAlive(holder)
  return ageMs > staleAfterMs
}

export const inOneSentence = (holder: Holder | null): string =>
  holder === null
    ? 'Another Plugtray seems to be opening this catalogue. Try again in a moment.'
    : `Plugtray ${holder.version} on ${holder.host} (process ${holder.pid}) has had this catalogue open since ${holder.at.slice(0, 16).replace('T', ' ')} UTC. Close it there to make changes here.`
