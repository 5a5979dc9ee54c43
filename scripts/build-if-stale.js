// Builds out/ when a source is newer than what was built, so that starting twice builds once.
import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { root, show } from './setup.js'

const built = [
  'out/main/browser-host.js',
  'out/main/cli.js',
  'out/preload/preload.cjs',
  'out/renderer/index.html',
]
const sources = [
  'shared',
  'electron',
  'renderer',
  'model',
  'package.json',
  'package-lock.json',
  'electron.vite.config.ts',
]

function newest(path) {
  const found = statSync(path)
  if (!found.isDirectory()) return found.mtimeMs
  return Math.max(0, ...readdirSync(path).map(name => newest(join(path, name))))
}

/** True when nothing had to be built, or the build went well. */
export function buildIfStale() {
  const outputs = built.map(name => join(root, name))
  const oldest = outputs.every(path => existsSync(path))
    ? Math.min(...outputs.map(path => statSync(path).mtimeMs))
    : 0
  const changed = Math.max(
    ...sources
      .map(name => join(root, name))
      .filter(path => existsSync(path))
      .map(newest),
  )
  if (oldest >= changed) return true
  console.error('Building Plugtray...')
  return show('npx', ['--no-install', 'electron-vite', 'build', '--logLevel', 'error']) === 0
}
