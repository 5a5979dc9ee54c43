// The adapter under lowdb: durable writes, strict reads. Writes that pile up are merged; each is acknowledged only
// when content at least as new as its own is on the disk.
import type { Adapter } from 'lowdb'
import type { Disk } from './disk.ts'
import { onDisk } from './disk-fault.ts'
import { replaceFile } from './durable-file.ts'

export type JsonFile<T> = {
  disk: Disk
  path: string
  /** Name inside the catalogue, for messages. */
  name: string
  /** Verifies and parses; throws FaultError. */
  decode: (bytes: Uint8Array) => T
  encode: (data: T) => Uint8Array
}

export class DurableJsonAdapter<T> implements Adapter<T> {
  readonly #file: JsonFile<T>
  #queued: Uint8Array | undefined
  #running: Promise<void> | undefined

  constructor(file: JsonFile<T>) {
    this.#file = file
  }

  /** Null when there is no file; a damaged one throws, it is never taken for an empty document. */
  async read(): Promise<T | null> {
    const { disk, path, name, decode } = this.#file
    if ((await onDisk(name, () => disk.stamp(path))) === null) return null
    return decode(await onDisk(name, () => disk.read(path)))
  }

  write(data: T): Promise<void> {
    this.#queued = this.#file.encode(data)
    this.#running ??= this.#drain()
    return this.#running
  }

  async #drain(): Promise<void> {
    const { disk, path, name } = this.#file
    try {
      while (this.#queued !== undefined) {
        const bytes = this.#queued
        this.#queued = undefined
        await onDisk(name, () => replaceFile(disk, path, bytes))
      }
    } finally {
      // Cleared here, not later: a write that comes in between would be lost.
      this.#running = undefined
      this.#queued = undefined
    }
  }
}
