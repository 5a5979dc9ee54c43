// How much the hosts accept: one place, so that every limit is tested at its border.

const KiB = 1024
const MiB = 1024 * KiB

export const limits = {
  jsonBytes: 1 * MiB,
  photoBytes: 64 * MiB,
  uploadsAtOnce: 4,
  /** Uploaded files waiting for an import, all together. */
  waitingFiles: 5000,
  waitingMs: 60 * 60_000,
  exportMs: 15 * 60_000,
  headerMs: 10_000,
  requestMs: 120_000,
  connections: 64,
  codeMs: 60_000,
} as const
