// A file that intake cannot open, and the one line a person reads about it. (What is wrong inside a picture: RefusedPicture.)

export class RefusedFile extends Error {
  readonly why: string
  constructor(why: string) {
    super(why)
    this.name = 'RefusedFile'
    this.why = why
  }
}

const elsewhere = 'Check that the card or phone is still connected, and add the file again.'

const gone = 'The file is not there any more. It may have been moved or deleted; add it from where it is now.'
const forbidden =
  'No permission to read this file. Change its permissions or copy it to a folder of your own.'
const unreadable = `The disk or card could not be read here. ${elsewhere}`

const lines: Readonly<Record<string, string>> = {
  ENOENT: gone,
  // A null byte in the path, which no file can have.
  ERR_INVALID_ARG_VALUE: gone,
  ENOTDIR: gone,
  EACCES: forbidden,
  EPERM: forbidden,
  ELOOP: 'This is a link, not a file. Add the file that it points to.',
  ENAMETOOLONG: 'The name of this file is too long for the system. Give it a shorter name.',
  EIO: unreadable,
  ENXIO: unreadable,
  ENODEV: unreadable,
  EBUSY: 'Another program holds this file. Close it there and add the file again.',
}

/** For errors of the file system on one file. Null: it is not about this file (no descriptors left, say). */
export function refusalOf(error: unknown): RefusedFile | null {
  if (error instanceof RefusedFile) return error
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  const why = typeof code === 'string' ? lines[code] : undefined
  return why === undefined ? null : new RefusedFile(why)
}
