// The adapter under lowdb: durable writes, strict reads. Writes that pile up are merged; each is acknowledged only
// when content at least as new as its own is on the disk.
import type { Adapter } from 'lowdb'
import type { Disk, FileStamp } from './disk.ts'
import { onDisk } from './disk-fault.ts'
import { replaceFile } from './durable-file.ts'
import { sameStamp } from './same-stamp.ts'

export type JsonFile<T> = {
  disk: Disk
  path: string
  /** Name inside the catalogue, for messages. */
  name: string
  /** Verifies and parses; throws FaultError. */
  decode: (bytes: Uint8Array) => T
  encode: (data: T) => Buffer
}

type Waiter = { resolve: () => void; reject: (error: unknown) => void }
type Batch<T> = { data: T; bytes: Buffer; waiters: Waiter[] }

export class DurableJsonAdapter<T> implements Adapter<T> {
  readonly #file: JsonFile<T>
  #queued: Batch<T> | undefined
  #draining = false
  /** What is in the file, as far as this process read or wrote it; null where there is none. */
  durable: T | null = null
  /** True when a failing disk would not even tell what is in the file now; reading clears it. */
  isInDoubt = false

  constructor(file: JsonFile<T>) {
    this.#file = file
  }

  /** Null when there is no file; a damaged one throws, it is never taken for an empty document. */
  async read(): Promise<T | null> {
    const { disk, path, name, decode } = this.#file
    const isThere = (await onDisk(name, () => disk.stamp(path))) !== null
    this.durable = isThere ? decode(await onDisk(name, () => disk.read(path))) : null
    this.isInDoubt = false
    return this.durable
  }

  /**
   * Rejects with FaultError; the next write then starts afresh. The file is as it was before, or, where the disk would
   * not let it be put back, `durable` is what the file holds now.
   */
  write(data: T): Promise<void> {
    const bytes = this.#file.encode(data)
    return new Promise((resolve, reject) => {
      this.#queued = { data, bytes, waiters: [...(this.#queued?.waiters ?? []), { resolve, reject }] }
      if (!this.#draining) void this.#drain()
    })
  }

  async #drain(): Promise<void> {
    this.#draining = true
    while (this.#queued !== undefined) {
      const batch = this.#queued
      this.#queued = undefined
      try {
        await this.#replace(batch)
        for (const { resolve } of batch.waiters) resolve()
      } catch (error) {
        for (const { reject } of batch.waiters) reject(error)
      }
    }
    // Directly after the last look at the queue: a write that came in between would be lost.
    this.#draining = false
  }

  async #replace({ data, bytes }: Batch<T>): Promise<void> {
    const { disk, path, name } = this.#file
    const before = await onDisk(name, () => disk.stamp(path))
    try {
      await onDisk(name, () => replaceFile(disk, path, bytes))
      this.durable = data
    } catch (error) {
      // Moved, but perhaps not for good: nobody was told that it is kept, so the content before comes back.
      if (await this.#hasMoved(before)) await this.#putBack(data)
      throw error
    }
  }

  async #hasMoved(before: FileStamp | null): Promise<boolean> {
    const { disk, path } = this.#file
    try {
      return !sameStamp(before, await disk.stamp(path))
    } catch {
      this.isInDoubt = true
      return false
    }
  }

  async #putBack(written: T): Promise<void> {
    const { disk, path, encode } = this.#file
    const before = this.durable === null ? null : encode(this.durable)
    try {
      if (before === null) await disk.remove(path)
      else await replaceFile(disk, path, before)
    } catch {
      // Then what lies there counts, as it would after a new start.
      const bytes = await disk.read(path).catch(() => null)
      if (bytes === null) this.isInDoubt = true
      else if (before?.compare(bytes) !== 0) this.durable = written
    }
  }
}
