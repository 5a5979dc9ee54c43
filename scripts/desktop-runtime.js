// Electron's runtime: whether it is here, and fetching it once where the internet can be reached. Never requires the
// package to find out, since that alone would start a download.
import { spawnSync } from 'node:child_process'
import { lookup } from 'node:dns/promises'
import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import process from 'node:process'
import { root } from './setup.js'

const folder = join(root, 'node_modules', 'electron')
const failedAt = join(root, 'node_modules', '.cache', 'plugtray-runtime-failed')
const aDay = 24 * 60 * 60 * 1000
const dnsMs = 2000
const fetchMs = 5 * 60 * 1000

/** Path of the runtime's program, or undefined. */
export function desktopRuntime() {
  try {
    const program = readFileSync(join(folder, 'path.txt'), 'utf8').trim()
    const override = process.env.ELECTRON_OVERRIDE_DIST_PATH
    if (override) return existsSync(join(override, program)) ? join(override, program) : undefined
    const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
    const there = readFileSync(join(folder, 'dist', 'version'), 'utf8')
      .trim()
      .replace(/^v/, '')
    const path = join(folder, 'dist', program)
    return there === version && existsSync(path) ? path : undefined
  } catch {
    // A file that is not there means that the runtime is not there.
    return undefined
  }
}

const failedLately = () => existsSync(failedAt) && Date.now() - statSync(failedAt).mtimeMs < aDay

async function isOnline() {
  const late = new Promise(resolve => setTimeout(() => resolve(false), dnsMs).unref())
  return Promise.race([
    lookup('github.com').then(
      () => true,
      () => false,
    ),
    late,
  ])
}

/** Fetches the runtime where that can work; a failure is remembered for a day. `force` tries in any case. */
export async function fetchRuntime({ force = false } = {}) {
  const known = desktopRuntime()
  if (known) return known
  if (!force && (failedLately() || !(await isOnline()))) return undefined
  console.error('Fetching the desktop runtime (once)...')
  const run = spawnSync(process.execPath, [join(folder, 'install.js')], {
    stdio: 'inherit',
    timeout: fetchMs,
  })
  const fetched = run.status === 0 ? desktopRuntime() : undefined
  if (!fetched) {
    mkdirSync(join(root, 'node_modules', '.cache'), { recursive: true })
    writeFileSync(failedAt, '')
  }
  return fetched
}
