// Work under one key is done one after another, in the order it was asked for; different keys do not wait for each other.

export type Turns = <T>(key: string, work: () => Promise<T>) => Promise<T>

/** A failure is its own: the next in line still gets its turn. */
export function turns(): Turns {
  const last = new Map<string, Promise<unknown>>()
  return (key, work) => {
    const turn = (last.get(key) ?? Promise.resolve()).then(work, work)
    const settled = turn.then(
      () => undefined,
      () => undefined,
    )
    last.set(key, settled)
    void settled.then(() => (last.get(key) === settled ? last.delete(key) : false))
    return turn
  }
}
