// The same work asked for twice at once is done once, and both get its result.

/** A failure is shared too, but not remembered: the next call tries again. */
export function sharedWork<T>(): (key: string, work: () => Promise<T>) => Promise<T> {
  const underWay = new Map<string, Promise<T>>()
  return (key, work) => {
    const running = underWay.get(key)
    if (running !== undefined) return running
    const started = work().finally(() => underWay.delete(key))
    underWay.set(key, started)
    return started
  }
}
