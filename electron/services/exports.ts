// Finished files waiting to be fetched by the page: kept in memory for some minutes, then gone.
import { randomUUID } from 'node:crypto'
import { limits } from '../limits.ts'

export type ExportedFile = { bytes: Uint8Array; fileName: string; type: string }

export type Exports = {
  add: (file: ExportedFile) => string
  get: (id: string) => ExportedFile | undefined
}

const most = 20

export function createExports(): Exports {
  const files = new Map<string, ExportedFile>()
  return {
    add(file) {
      const id = randomUUID()
      files.set(id, file)
      const oldest = files.keys().next().value
      if (files.size > most && oldest !== undefined) files.delete(oldest)
      setTimeout(() => files.delete(id), limits.exportMs).unref()
      return id
    },
    get: id => files.get(id),
  }
}
