// Object URLs of fetched photos. Few are fetched at a time, so that typed operations are never stuck behind pictures; what
// nobody shows any more is not fetched to the end; the least recently used ones are let go when they grow too large.

type Load = (signal: AbortSignal) => Promise<Blob>

type Entry = {
  holders: number
  url: string | undefined
  bytes: number
  loading: { result: Promise<string>; stop: AbortController } | undefined
}

type Limits = {
  /** Kept in all, as long as others than those shown can be let go. */
  bytes: number
  /** Fetched at a time; a browser opens six connections to one host. */
  atOnce: number
}

const usual: Limits = { bytes: 160 * 1024 * 1024, atOnce: 3 }

export class PhotoCache {
  readonly #limits: Limits
  readonly #entries = new Map<string, Entry>()
  readonly #waiting: (() => void)[] = []
  #running = 0
  #bytes = 0

  constructor(limits: Limits = usual) {
    this.#limits = limits
  }

  /** The photo's URL if it is there already. */
  peek(key: string): string | undefined {
    return this.#entries.get(key)?.url
  }

  /**
   * Holds a photo until `release`; two holders share one load. Rejects as the load does, and with an AbortError when
   * it was released by all before it came.
   */
  hold(key: string, load: Load): Promise<string> {
    const entry = this.#entries.get(key) ?? { holders: 0, url: undefined, bytes: 0, loading: undefined }
    // Last in the map is most recently used.
    this.#entries.delete(key)
    this.#entries.set(key, entry)
    entry.holders += 1
    if (entry.url !== undefined) return Promise.resolve(entry.url)
    if (!entry.loading) {
      const stop = new AbortController()
      entry.loading = { stop, result: this.#load(entry, load, stop.signal) }
    }
    return entry.loading.result
  }

  release(key: string): void {
    const entry = this.#entries.get(key)
    if (!entry) return
    entry.holders -= 1
    if (entry.holders > 0) return
    if (entry.loading) {
      entry.loading.stop.abort()
      entry.loading = undefined
    }
    if (entry.url === undefined) this.#entries.delete(key)
    this.#letGo()
  }

  async #load(entry: Entry, load: Load, signal: AbortSignal): Promise<string> {
    await this.#turn()
    try {
      signal.throwIfAborted()
      const blob = await load(signal)
      signal.throwIfAborted()
      entry.url = URL.createObjectURL(blob)
      entry.bytes = blob.size
      this.#bytes += blob.size
      this.#letGo()
      return entry.url
    } finally {
      if (entry.loading?.stop.signal === signal) entry.loading = undefined
      this.#running -= 1
      // The newest wish first: it is what is in sight now.
      this.#waiting.pop()?.()
    }
  }

  #turn(): Promise<void> {
    const take = () => {
      this.#running += 1
    }
    if (this.#running < this.#limits.atOnce) {
      take()
      return Promise.resolve()
    }
    return new Promise(resolve => {
      this.#waiting.push(() => {
        take()
        resolve()
      })
    })
  }

  #letGo(): void {
    for (const [key, entry] of this.#entries) {
      if (this.#bytes <= this.#limits.bytes) return
      if (entry.holders > 0 || entry.url === undefined) continue
      URL.revokeObjectURL(entry.url)
      this.#bytes -= entry.bytes
      this.#entries.delete(key)
    }
  }
}
