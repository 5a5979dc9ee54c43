// The built page: every file read once at the start, served by exact name, so that no path is ever computed.
import { readdirSync, readFileSync } from 'node:fs'
import { extname, join } from 'node:path'

export type PageFiles = { answer: (method: string, pathname: string) => Response }

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
}

/** Loads the files of a built page; `folder` need not exist (then every name is unknown). */
export function loadPageFiles(folder: string): PageFiles {
  const files = new Map<string, { bytes: Buffer<ArrayBuffer>; type: string }>()
  const take = (inside: string) => {
    for (const entry of readdirSync(join(folder, inside), { withFileTypes: true })) {
      const name = `${inside}/${entry.name}`
      const type = types[extname(entry.name)]
      if (entry.isDirectory()) take(name)
      else if (entry.isFile() && type)
        files.set(name, { bytes: Buffer.from(readFileSync(join(folder, name))), type })
    }
  }
  try {
    take('')
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'ENOENT')) throw error
  }
  const index = files.get('/index.html')
  if (index) files.set('/', index)
  return {
    answer(method, pathname) {
      const file = files.get(pathname)
      if (!file || method !== 'GET')
        return new Response(method === 'GET' ? 'There is no such page.' : 'Pages are only read.', {
          status: method === 'GET' ? 404 : 405,
          headers: { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' },
        })
      const hashed = pathname.startsWith('/assets/')
      return new Response(file.bytes, {
        headers: {
          'content-type': file.type,
          'cache-control': hashed ? 'private, max-age=31536000, immutable' : 'no-store',
        },
      })
    },
  }
}
