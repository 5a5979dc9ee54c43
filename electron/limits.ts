// How much the hosts accept: one place, so that every limit is tested at its border.
import { maxPhotoBytes } from './services/imaging/picture-limits.ts'

const KiB = 1024
const MiB = 1024 * KiB
const GiB = 1024 * MiB

export const limits = {
  jsonBytes: 1 * MiB,
  photoBytes: maxPhotoBytes,
  /** Text files: recordings of a lab scope run to 100 MB a minute. */
  recordingBytes: 512 * MiB,
  uploadsAtOnce: 4,
  /** Uploaded files waiting for an import, all together. */
  waitingFiles: 5000,
  waitingMs: 60 * 60_000,
  exportMs: 15 * 60_000,
  /** Free space that an upload must leave on the catalogue's disk: the smaller of the two. */
  spareBytes: 1 * GiB,
  spareShare: 0.05,
  headerMs: 10_000,
  requestMs: 120_000,
  connections: 64,
  /** A request body that brings less than this in each window is given up. */
  slowestBytes: 10 * KiB,
  slowWindowMs: 10_000,
  /** How long the rest of a refused body is thrown away before the connection ends. */
  lingerMs: 1_000,
  codeMs: 60_000,
  logBytes: 5 * MiB,
} as const
