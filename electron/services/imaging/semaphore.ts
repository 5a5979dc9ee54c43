// Bounds how much heavy work runs at once. A turn may weigh more than one, so that a very large picture runs alone.

export type Semaphore = {
  /** Waits for its turn, runs `work`, frees the turn. Rejects with the signal's reason while still waiting. */
  run: <T>(
    work: () => Promise<T>,
    options?: { weight?: number; signal?: AbortSignal | undefined },
  ) => Promise<T>
  readonly capacity: number
}

type Waiting = { weight: number; start: () => void }

/** First come, first served: a heavy turn at the head holds back lighter ones behind it, so that it cannot starve. */
export function createSemaphore(capacity: number): Semaphore {
  let free = capacity
  const queue: Waiting[] = []

  function startWhatFits(): void {
    for (let next = queue[0]; next !== undefined && next.weight <= free; next = queue[0]) {
      queue.shift()
      free -= next.weight
      next.start()
    }
  }

  function turn(weight: number, signal: AbortSignal | undefined): Promise<void> {
    return new Promise((resolve, reject) => {
      const leave = (): void => {
        const at = queue.indexOf(waiting)
        if (at >= 0) queue.splice(at, 1)
        reject(signal?.reason)
        startWhatFits()
      }
      const waiting: Waiting = {
        weight,
        start: () => {
          signal?.removeEventListener('abort', leave)
          resolve()
        },
      }
      if (signal?.aborted === true) return reject(signal.reason)
      signal?.addEventListener('abort', leave, { once: true })
      queue.push(waiting)
      startWhatFits()
    })
  }

  return {
    capacity,
    run: async (work, { weight = 1, signal } = {}) => {
      const bounded = Math.min(Math.max(weight, 1), capacity)
      await turn(bounded, signal)
      try {
        return await work()
      } finally {
        free += bounded
        startWhatFits()
      }
    },
  }
}
