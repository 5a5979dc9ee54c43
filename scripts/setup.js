// What a fresh clone lacks, installed: the right Node, the packages of the lockfile, a Chromium for the tests.
import { spawnSync } from 'node:child_process'
import { existsSync, statSync } from 'node:fs'
import { join, resolve } from 'node:path'
import process from 'node:process'

export const root = resolve(import.meta.dirname, '..')

export function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  if (major > 20 || (major === 20 && minor >= 19)) return
  console.error(`Plugtray needs Node 20.19 or newer; this is ${process.versions.node}.`)
  process.exit(1)
}

/** Runs a command in the project folder with its output shown; returns its exit status. */
export function show(command, args, options = {}) {
  const run = spawnSync(command, args, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
    ...options,
  })
  if (run.error) console.error(`${command}: ${run.error.message}`)
  return run.status ?? 1
}

/** `npm ci` with lifecycle scripts off, only when the installed packages are not those of the lockfile. */
export function installPackages() {
  const installed = join(root, 'node_modules', '.package-lock.json')
  if (
    existsSync(installed) &&
    statSync(installed).mtimeMs >= statSync(join(root, 'package-lock.json')).mtimeMs
  )
    return
  console.error('Installing packages (npm ci, lifecycle scripts off)...')
  if (show('npm', ['ci', '--ignore-scripts']) === 0) return
  console.error('npm ci failed: see the lines above. Nothing was started.')
  process.exit(1)
}

const browsers = {
  linux: [
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/usr/bin/microsoft-edge',
  ],
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: ['ProgramFiles', 'ProgramFiles(x86)', 'LOCALAPPDATA'].flatMap(name => {
    const folder = process.env[name]
    return folder
      ? [
          join(folder, 'Chromium/Application/chrome.exe'),
          join(folder, 'Google/Chrome/Application/chrome.exe'),
          join(folder, 'Microsoft/Edge/Application/msedge.exe'),
        ]
      : []
  }),
}

/** Path of a Chromium-family browser on this system, or undefined. PLUGTRAY_CHROMIUM names another. */
export function findChromium() {
  return [process.env.PLUGTRAY_CHROMIUM, ...(browsers[process.platform] ?? [])].find(
    path => path && existsSync(path),
  )
}

/** The platform's own way to a Chromium; without one the tests stop, they are not skipped. */
export function requireChromium() {
  const found = findChromium()
  if (found) return found
  console.error('No Chromium found: installing it for the end-to-end tests...')
  if (process.platform === 'linux') {
    const sudo = process.getuid?.() === 0 ? [] : ['sudo', '-n']
    for (const args of [
      ['apt-get', 'update', '-q'],
      ['apt-get', 'install', '-y', '-q', 'chromium'],
    ]) {
      const [command, ...rest] = [...sudo, ...args]
      if (command) show(command, rest)
    }
  } else if (process.platform === 'darwin') show('brew', ['install', '--cask', 'chromium'])
  else if (process.platform === 'win32') show('winget', ['install', '--silent', 'Hibbiki.Chromium'])
  const installed = findChromium()
  if (installed) return installed
  console.error(
    'A Chromium is needed for the end-to-end tests. Install one, or set PLUGTRAY_CHROMIUM to its path.',
  )
  return process.exit(1)
}
