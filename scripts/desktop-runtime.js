// The desktop runtime (Electron's binary): whether it is here, and how it is fetched. Its package never fetches it unasked.
import { spawnSync } from 'node:child_process'
import { lookup } from 'node:dns/promises'
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import process from 'node:process'

const dnsMs = 2000
/** About 120 MB: enough for a slow line, not for a line that gives nothing. */
const fetchMs = 5 * 60_000
const rememberedMs = 24 * 60 * 60_000

const fallbackNames = { darwin: 'Electron.app/Contents/MacOS/Electron', win32: 'electron.exe' }

const textOf = path => {
  try {
    return readFileSync(path, 'utf8').trim()
  } catch {
    return ''
  }
}

/** Where the runtime's parts lie under a project folder. */
export function runtimePlaces(root) {
  const folder = join(root, 'node_modules', 'electron')
  return {
    folder,
    installer: join(folder, 'install.js'),
    failure: join(root, 'node_modules', '.cache', 'plugtray', 'runtime-failed.json'),
  }
}

/**
 * Path of the runtime's program, or undefined where it is absent or of another version than its package. Reads files
 * only: asking the package itself would start a download.
 */
export function findRuntime(root, env = process.env) {
  const { folder } = runtimePlaces(root)
  const named = textOf(join(folder, 'path.txt'))
  const override = env.ELECTRON_OVERRIDE_DIST_PATH
  if (override) {
    const program = join(override, named || fallbackNames[process.platform] || 'electron')
    return existsSync(program) ? program : undefined
  }
  const program = join(folder, 'dist', named)
  const installed = textOf(join(folder, 'dist', 'version')).replace(/^v/, '')
  return named !== '' && installed === packageVersion(folder) && existsSync(program) ? program : undefined
}

function packageVersion(folder) {
  try {
    return JSON.parse(textOf(join(folder, 'package.json'))).version
  } catch {
    return undefined
  }
}

/** The machine the runtime would come from; a mirror that the person set goes first. */
function sourceHost(env) {
  const mirror = env.npm_config_electron_mirror || env.ELECTRON_MIRROR
  try {
    return new URL(mirror ?? '').hostname || 'github.com'
  } catch {
    return 'github.com'
  }
}

/** True when the name is answered within two seconds. */
async function answers(host, resolveName) {
  let timer
  const tooLate = new Promise(resolve => {
    timer = setTimeout(() => resolve(false), dnsMs)
  })
  try {
    return await Promise.race([resolveName(host).then(() => true), tooLate])
  } catch {
    return false
  } finally {
    clearTimeout(timer)
  }
}

function failedLately(file, version, now) {
  try {
    const failure = JSON.parse(readFileSync(file, 'utf8'))
    const age = now - failure.at
    return failure.version === version && age >= 0 && age < rememberedMs
  } catch {
    return false
  }
}

/**
 * Fetches the runtime where that has a chance. `again`: even though it failed today, and without a time limit.
 * Returns {program} or {why}, a reason that completes "no desktop window: ...".
 */
export async function fetchRuntime(
  root,
  { again = false, env = process.env, now = Date.now, ...asked } = {},
) {
  const { folder, installer, failure } = runtimePlaces(root)
  const version = packageVersion(folder)
  if (version === undefined) return { why: 'the electron package is not installed' }
  if (!again && failedLately(failure, version, now()))
    return { why: 'fetching it failed within the last day (`npm run desktop` tries again)' }
  const host = sourceHost(env)
  if (!(await answers(host, asked.resolveName ?? lookup))) return { why: `${host} cannot be reached` }
  console.error(`Fetching the desktop runtime (Electron ${version}, once)...`)
  const run = spawnSync(process.execPath, [installer], {
    cwd: root,
    env,
    stdio: ['ignore', 'inherit', 'inherit'],
    ...(again ? {} : { timeout: asked.limitMs ?? fetchMs, killSignal: 'SIGKILL' }),
  })
  const program = run.status === 0 ? findRuntime(root, env) : undefined
  if (program) {
    rmSync(failure, { force: true })
    return { program }
  }
  mkdirSync(join(failure, '..'), { recursive: true })
  writeFileSync(failure, JSON.stringify({ version, at: now() }))
  return {
    why: run.signal
      ? 'fetching it took too long and was stopped'
      : 'fetching it failed (see the lines above)',
  }
}
