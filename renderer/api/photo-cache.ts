// Object URLs of fetched photos: the least recently used ones are let go once nobody shows them.

const mostKept = 300

type Entry = { url: string | undefined; loading: Promise<string> | undefined; holders: number }

export class PhotoCache {
  readonly #entries = new Map<string, Entry>()

  #entry(key: string): Entry {
    const known = this.#entries.get(key) ?? { url: undefined, loading: undefined, holders: 0 }
    // Last in the map is most recently used.
    this.#entries.delete(key)
    this.#entries.set(key, known)
    return known
  }

  hold(key: string): void {
    this.#entry(key).holders += 1
  }

  release(key: string): void {
    const entry = this.#entries.get(key)
    if (entry) entry.holders -= 1
    for (const [old, candidate] of this.#entries) {
      if (this.#entries.size <= mostKept) return
      if (candidate.holders > 0 || candidate.loading) continue
      if (candidate.url) URL.revokeObjectURL(candidate.url)
      this.#entries.delete(old)
    }
  }

  /** Two users of a photo share one load; it is not aborted when one of them goes. */
  async get(key: string, load: () => Promise<Blob>): Promise<string> {
    const entry = this.#entry(key)
    if (entry.url) return entry.url
    entry.loading ??= load()
      .then(blob => {
        entry.url = URL.createObjectURL(blob)
        return entry.url
      })
      .finally(() => {
        entry.loading = undefined
      })
    return entry.loading
  }
}
