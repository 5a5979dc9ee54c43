// Turns an error of the operating system into a sentence a person can act on, naming the file inside the catalogue.
import { FaultError } from '../fault.ts'

const permissions = 'Check the permissions of the catalogue folder.'

const reasons: Readonly<Record<string, [what: string, hint: string]>> = {
  ENOSPC: ['The disk is full; the change was not kept.', 'Make room, then make the change again.'],
  EDQUOT: [
    'Your share of the disk is used up; the change was not kept.',
    'Make room, then make the change again.',
  ],
  EROFS: [
    'The disk can only be read; the change was not kept.',
    'Make the disk writable or move the catalogue.',
  ],
  EACCES: ['The system does not permit this.', permissions],
  EPERM: ['The system does not permit this.', permissions],
  EIO: ['The disk reports a fault.', 'Save a copy of the catalogue elsewhere and check the disk.'],
  ENOENT: [
    'A file or folder of the catalogue is gone.',
    'Check that the disk is connected, then run a check.',
  ],
  ENOTDIR: [
    'There is a file where the catalogue needs a folder.',
    'Move that file out of the catalogue folder.',
  ],
  EBUSY: ['Another program holds this file.', 'Close the other program and try again.'],
  EMFILE: ['Too many files are open on this computer.', 'Close other programs and try again.'],
  ENFILE: ['Too many files are open on this computer.', 'Close other programs and try again.'],
}

/** Code of a system error, e.g. ENOSPC. */
export const codeOf = (error: unknown): unknown =>
  error instanceof Error && 'code' in error ? error.code : undefined

/** FaultError stays as it is; a system error becomes DISK; anything else is a bug and is thrown on. */
export function diskFault(error: unknown, where: string): unknown {
  if (error instanceof FaultError) return error
  const code = codeOf(error)
  if (typeof code !== 'string' || !/^E[A-Z0-9]+$/.test(code)) return error
  const [what, hint] = reasons[code] ?? [`The disk refused (${code}).`, 'Try again; run a check if it stays.']
  return new FaultError('DISK', { what, where, hint }, { cause: error })
}

/** Runs work on one file of the catalogue and gives its system errors their words. */
export async function onDisk<T>(where: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    throw diskFault(error, where)
  }
}
