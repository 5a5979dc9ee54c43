// What changed, told to every window that listens. A window that does not keep up hears of each job once, not of each step.
import type { Change } from '../../shared/contract/contract.ts'

export type Changes = {
  tell: (change: Change) => void
  /** Changes from now on, until the signal or the reader ends it. */
  stream: (signal?: AbortSignal) => AsyncGenerator<Change>
  /** Ends every stream. */
  close: () => void
}

const keyOf = (change: Change): string => ('id' in change ? `job ${change.id}` : change.kind)

export function createChanges(): Changes {
  const listeners = new Set<(change: Change) => void>()
  const open = new Set<() => void>()

  async function* waitFor(
    waiting: Map<string, Change>,
    asleep: (wake: () => void) => void,
    ended: () => boolean,
    stop: () => void,
  ): AsyncGenerator<Change> {
    try {
      while (!ended()) {
        const [next] = waiting
        if (next) {
          waiting.delete(next[0])
          yield next[1]
        } else await new Promise<void>(resolve => asleep(resolve))
      }
    } finally {
      stop()
    }
  }

  return {
    tell(change) {
      for (const listener of listeners) listener(change)
    },
    stream(signal) {
      const waiting = new Map<string, Change>()
      let wake = () => {}
      let ended = false
      const listener = (change: Change) => {
        // The newest word about a job replaces an older one that was not read yet, and goes to the end of the line.
        waiting.delete(keyOf(change))
        waiting.set(keyOf(change), change)
        wake()
      }
      const end = () => {
        ended = true
        wake()
      }
      // Listening begins here, not with the first read: nothing in between is missed.
      listeners.add(listener)
      open.add(end)
      signal?.addEventListener('abort', end, { once: true })
      return waitFor(
        waiting,
        resolve => {
          wake = resolve
          if (waiting.size > 0 || ended) resolve()
        },
        () => ended || signal?.aborted === true,
        () => {
          listeners.delete(listener)
          open.delete(end)
          signal?.removeEventListener('abort', end)
        },
      )
    },
    close() {
      for (const end of open) end()
    },
  }
}
