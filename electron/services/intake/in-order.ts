// Works off a list a few at a time and answers in the list's order. The first failure, or a cancel, stops the rest.

/** `stop` is aborted as soon as any item fails or `signal` is; items already begun are waited for before it rejects. */
export async function inOrder<T, R>(
  items: readonly T[],
  atOnce: number,
  signal: AbortSignal | undefined,
  work: (item: T, stop: AbortSignal) => Promise<R>,
): Promise<R[]> {
  const stopping = new AbortController()
  const onAbort = () => stopping.abort(signal?.reason)
  if (signal?.aborted === true) onAbort()
  signal?.addEventListener('abort', onAbort, { once: true })

  const results: R[] = Array.from({ length: items.length })
  const remaining = items.entries()
  async function worker(): Promise<void> {
    for (const [i, item] of remaining) {
      stopping.signal.throwIfAborted()
      try {
        results[i] = await work(item, stopping.signal)
      } catch (error) {
        stopping.abort(error)
        throw error
      }
    }
  }
  try {
    await Promise.allSettled(Array.from({ length: atOnce }, worker))
    // One reason for all: the signal's, or the first failure.
    stopping.signal.throwIfAborted()
    return results
  } finally {
    signal?.removeEventListener('abort', onAbort)
  }
}
