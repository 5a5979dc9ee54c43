// What can lie under a path instead of a plain file of a bearable size.
import { execFileSync } from 'node:child_process'
import { chmod, mkdir, symlink, truncate, writeFile } from 'node:fs/promises'
import { createServer } from 'node:net'
import { join } from 'node:path'
import { jpegBytes } from '../fixtures/images/pictures.ts'
import type { Expected } from './bad-files-case.ts'

export type OnDisk = {
  what: string
  path: string
  expected: Expected
  /** Why this case cannot be tried here. */
  skip?: string
}

const limit = 64 * 1024 * 1024
const isRoot = process.getuid?.() === 0
const unix = process.platform !== 'win32'
const link = /^This is a link, not a file\. Add the file that it points to\.$/
const special = /^This is a device or a pipe, not a file\. Add a photo file\.$/
const gone =
  /^The file is not there any more\. It may have been moved or deleted; add it from where it is now\.$/

export async function onDisk(folder: string): Promise<{ cases: OnDisk[]; close: () => Promise<void> }> {
  const at = (name: string) => join(folder, name)
  await mkdir(at('folder.jpg'))
  await writeFile(at('target.jpg'), await jpegBytes(400))
  await symlink('target.jpg', at('link.jpg'))
  await symlink('nowhere.jpg', at('dangling.jpg'))
  await symlink('loop.jpg', at('loop.jpg'))
  execFileSync('mkfifo', [at('pipe.jpg')])
  const server = createServer()
  await new Promise<void>(resolve => server.listen(at('socket.jpg'), resolve))
  await writeFile(at('forbidden.jpg'), await jpegBytes(401))
  await chmod(at('forbidden.jpg'), 0)
  // The rest of these files is a hole: they weigh nothing on the disk.
  await writeFile(at('just.jpg'), await jpegBytes(402))
  await truncate(at('just.jpg'), limit)
  await writeFile(at('over.jpg'), await jpegBytes(403))
  await truncate(at('over.jpg'), limit + 1)
  await writeFile(at('film.jpg'), Buffer.from('\0\0\0\x18ftypisom\0\0\0\0mp41mp42', 'latin1'))
  await truncate(at('film.jpg'), 3 * 1024 * 1024 * 1024)

  const refused = (what: string, path: string, line: RegExp, skip?: string): OnDisk => ({
    what,
    path,
    expected: { refused: line },
    ...(skip === undefined ? {} : { skip }),
  })
  const onUnix = unix ? undefined : 'Windows has no such thing'
  const cases: OnDisk[] = [
    refused(
      'a folder',
      at('folder.jpg'),
      /^This is a folder, not a file\. Open it and add the photos in it\.$/,
    ),
    refused('a link to a good photo', at('link.jpg'), link),
    refused('a dangling link', at('dangling.jpg'), link),
    refused('a link to itself', at('loop.jpg'), link),
    refused('a pipe that nobody writes to', at('pipe.jpg'), special, onUnix),
    refused('a socket', at('socket.jpg'), special, onUnix),
    refused('a device without end', '/dev/zero', special, onUnix),
    refused(
      'a file that says it is empty and is not',
      '/proc/self/status',
      /^The file changed while it was read\./,
      process.platform === 'linux' ? undefined : 'only Linux has it',
    ),
    refused('a file that is gone', at('gone.jpg'), gone),
    refused('a file under a file', join(at('target.jpg'), 'inner.jpg'), gone),
    refused('a name that is too long', at(`${'x'.repeat(300)}.jpg`), /^The name of this file is too long/),
    refused('a name with a null byte', at('a\0b.jpg'), gone),
    refused(
      'a file without permission',
      at('forbidden.jpg'),
      /^No permission to read this file\./,
      isRoot ? 'the administrator may read everything' : undefined,
    ),
    {
      what: 'a photo of exactly 64 MiB',
      path: at('just.jpg'),
      expected: { added: 'jpeg', shot: { bytes: limit } },
    },
    refused(
      'a photo of 64 MiB and one byte',
      at('over.jpg'),
      /^This photo is 65 MiB; at most 64 MiB are taken in\. Add a smaller copy as JPEG\.$/,
    ),
    refused('a film of 3 GiB', at('film.jpg'), /^This is a video of 3072 MiB; at most 64 MiB are taken in\./),
  ]
  return { cases, close: () => new Promise(resolve => server.close(() => resolve())) }
}
