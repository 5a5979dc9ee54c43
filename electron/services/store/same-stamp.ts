// Whether a file is still the one that was looked at before.
import type { FileStamp } from './disk.ts'

/** Null stands for a file that is not there. */
export const sameStamp = (a: FileStamp | null, b: FileStamp | null): boolean =>
  a === null || b === null ? a === b : a.mtimeMs === b.mtimeMs && a.size === b.size && a.ino === b.ino
