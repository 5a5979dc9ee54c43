// One document that lowdb keeps in memory, always the same as what is in its file.
import { Low } from 'lowdb'
import { DurableJsonAdapter, type JsonFile } from './json-adapter.ts'

export type StoredDocument<T> = {
  /** As last read or written; null where there is no file. */
  current: () => T | null
  /** Reads and verifies afresh. Throws FaultError. */
  read: () => Promise<T | null>
  /** Durable when it returns. Throws FaultError; the document is then what its file holds. */
  write: (data: T) => Promise<void>
  /** After a write on a failing disk: reads again what the file holds, if that is in doubt. False while it still is. */
  settle: () => Promise<boolean>
}

export function storedDocument<T>(file: JsonFile<T>): StoredDocument<T> {
  const adapter = new DurableJsonAdapter<T>(file)
  const low = new Low<T | null>(
    { read: () => adapter.read(), write: async data => (data === null ? undefined : adapter.write(data)) },
    null,
  )
  const read = async (): Promise<T | null> => {
    low.data = null
    await low.read()
    return low.data
  }
  return {
    current: () => low.data,
    read,
    async settle() {
      if (!adapter.isInDoubt) return true
      const before = low.data
      try {
        await read()
      } catch {
        low.data = before
      }
      return !adapter.isInDoubt
    },
    async write(data) {
      low.data = data
      try {
        await low.write()
      } catch (error) {
        // A newer write that waits behind this one keeps its own content and answers for itself.
        if (low.data === data) low.data = adapter.durable
        throw error
      }
    },
  }
}
