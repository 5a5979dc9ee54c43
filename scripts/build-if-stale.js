// Builds out/ when a source is newer than what was built, or something of it is missing.
import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import process from 'node:process'
import { root, show } from './setup.js'

const sources = [
  'shared',
  'electron',
  'renderer',
  'model/runtime',
  'package.json',
  'package-lock.json',
  'electron.vite.config.ts',
  'tsconfig.json',
]
const built = [
  'out/main/main.js',
  'out/main/browser-host.js',
  'out/preload/preload.cjs',
  'out/renderer/index.html',
]

/** Time of the newest change under a path; of a folder too, so that a removed file counts. 0 when there is none. */
function newest(path) {
  let stat
  try {
    stat = statSync(path)
  } catch {
    return 0
  }
  if (!stat.isDirectory()) return stat.mtimeMs
  const inside = readdirSync(path).filter(name => !/\.test\.tsx?$/.test(name))
  return Math.max(stat.mtimeMs, ...inside.map(name => newest(join(path, name))))
}

export function isStale(folder = root) {
  const oldest = Math.min(...built.map(name => newest(join(folder, name))))
  return sources.some(name => newest(join(folder, name)) > oldest)
}

export function buildIfStale() {
  if (!isStale()) return
  console.error('Building...')
  if (show('npx', ['--no-install', 'electron-vite', 'build', '--logLevel', 'warn']) === 0) return
  console.error('The build failed: see the lines above. Nothing was started.')
  process.exit(1)
}
