// What every part of a check shares: reading with a count, telling problems, progress and the way out.
import { join } from 'node:path'
import type { CatalogueProblem } from '../../../shared/contract/task-schema.ts'
import { FaultError } from '../fault.ts'
import type { Disk } from './disk.ts'
import { codeOf, diskFault } from './disk-fault.ts'
import { isLeftOver } from './durable-file.ts'

export type CheckOptions = {
  /** Rebuild the index and the derived pictures. The caller holds the lock. */
  mend: boolean
  signal?: AbortSignal | undefined
  onProgress?: ((done: number, total: number, what: string) => void) | undefined
  disk?: Disk
  /** Writes the index of a catalogue that is in use; without it the check waits for as long as that takes elsewhere. */
  flushIndex?: () => Promise<void>
}

export type Checking = {
  disk: Disk
  mend: boolean
  /** Path of a name inside the catalogue. */
  at: (...parts: string[]) => string
  /** Names in a folder of the catalogue; none where there is no such folder. */
  names: (folder: string) => Promise<string[]>
  /** Null for a file that is gone by now, or that cannot be read: that is then said. */
  read: (name: string) => Promise<Buffer | null>
  say: (file: string, kind: CatalogueProblem['kind'], what: string, hint: string, mended?: boolean) => void
  /** Said at the end, if it is still there then: a write may be under way. */
  sayLeftOver: (name: string) => void
  /** A file that could not be used, in the words of its fault. */
  sayFault: (name: string, error: unknown) => void
  foreign: (name: string) => void
  /** Until changes of a moment ago have reached the index. */
  untilIndexed: () => Promise<void>
  /** Gives way when the check was cancelled. */
  pause: () => void
  step: (what: string) => void
}

/** Put into folders by operating systems, not by people. */
const litter = new Set(['.DS_Store', 'Thumbs.db', 'desktop.ini'])
const writesTakeMs = 150
/** Longer than the pause after which a running Plugtray writes its index. */
const indexPauseMs = 500
const rest = (ms: number) => new Promise<void>(resolve => setTimeout(resolve, ms))

export type StartedCheck = {
  checking: Checking
  counts: { jobs: number; photos: number; bytesRead: number }
  /** So many steps are to come. */
  expect: (steps: number) => void
  /** All problems, once those that may be writes under way were looked at again. */
  finish: () => Promise<CatalogueProblem[]>
}

export function startChecking(folder: string, disk: Disk, options: CheckOptions): StartedCheck {
  const problems: CatalogueProblem[] = []
  const counts = { jobs: 0, photos: 0, bytesRead: 0 }
  const leftOvers: string[] = []
  let done = 0
  let total = 0
  const at = (...parts: string[]) => join(folder, ...parts)

  const checking: Checking = {
    disk,
    mend: options.mend,
    at,
    names: async name => ((await disk.isFolder(at(name))) ? disk.list(at(name)) : []),
    async read(name) {
      try {
        const bytes = await disk.read(at(name))
        counts.bytesRead += bytes.length
        return bytes
      } catch (error) {
        if (codeOf(error) !== 'ENOENT') checking.sayFault(name, diskFault(error, name))
        return null
      }
    },
    say(file, kind, what, hint, mended = false) {
      problems.push({ file, kind, what, hint, mended })
    },
    sayLeftOver: name => leftOvers.push(name),
    sayFault(name, error) {
      if (!(error instanceof FaultError)) throw error
      const kind = error.code === 'NEWER_VERSION' ? 'newer version' : 'damaged'
      checking.say(name, kind, error.fault.what, error.fault.hint)
    },
    foreign(name) {
      const last = name.split('/').at(-1) ?? ''
      if (litter.has(last)) return
      if (isLeftOver(last)) checking.sayLeftOver(name)
      else checking.say(name, 'foreign', 'This does not belong here.', 'Move it out of the catalogue.')
    },
    async untilIndexed() {
      await rest(options.flushIndex ? writesTakeMs : indexPauseMs)
      await options.flushIndex?.()
    },
    pause: () => options.signal?.throwIfAborted(),
    step(what) {
      checking.pause()
      done += 1
      options.onProgress?.(done, total, what)
    },
  }

  return {
    checking,
    counts,
    expect(steps) {
      total += steps
    },
    async finish() {
      if (leftOvers.length > 0) await rest(writesTakeMs)
      for (const name of leftOvers)
        if ((await disk.stamp(at(name))) !== null || (await disk.isFolder(at(name))))
          checking.say(name, 'left-over', 'A write was interrupted here.', 'It goes away at the next start.')
      return problems
    },
  }
}
