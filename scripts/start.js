// `npm start`: packages and build if need be, then the desktop window; without its runtime the same app in a browser.
// Plain JavaScript on Node's own modules, because it runs before anything is installed. `npm run desktop` insists on the
// window and fetches its runtime without a time limit.
import { spawn } from 'node:child_process'
import { resolve } from 'node:path'
import process from 'node:process'
import { pathToFileURL } from 'node:url'
import { parseArgs } from 'node:util'
import { buildIfStale } from './build-if-stale.js'
import { fetchRuntime, findRuntime } from './desktop-runtime.js'
import { installPackages, requireNode, root } from './setup.js'

const usage = 'Usage: npm start -- [--catalogue DIR] [--browser | --desktop] [--port N] [--no-open]'

/** A window that ends with a fault this soon never opened. */
const startingMs = 15_000

requireNode()
const asked = readArguments()
installPackages()
buildIfStale()

const browserOnly = asked.browser || asked['no-open'] || asked.port !== undefined
const { program, why } = asked.desktop ? await insist() : browserOnly ? {} : await desktopProgram()
if (!program || !(await openDesktop(program))) {
  if (why) console.error(`No desktop window: ${why}. The same app is served to your browser instead.`)
  await serveToBrowser()
}

function readArguments() {
  try {
    return parseArgs({
      options: {
        catalogue: { type: 'string' },
        port: { type: 'string' },
        'no-open': { type: 'boolean' },
        browser: { type: 'boolean' },
        desktop: { type: 'boolean' },
      },
    }).values
  } catch (error) {
    console.error(`${error.message}\n${usage}`)
    return process.exit(2)
  }
}

async function desktopProgram() {
  const noDisplay = process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY
  if (noDisplay) return { why: 'there is no display' }
  const present = findRuntime(root)
  return present ? { program: present } : fetchRuntime(root)
}

async function insist() {
  const present = findRuntime(root)
  const { program, why } = present ? { program: present } : await fetchRuntime(root, { again: true })
  if (program) return { program }
  console.error(`No desktop window: ${why}. \`npm start\` serves the same app to your browser.`)
  return process.exit(1)
}

/** False when the window could not open. */
function openDesktop(program) {
  const env = { ...process.env }
  // Set by some editors' terminals: the runtime would then be a plain Node.
  delete env.ELECTRON_RUN_AS_NODE
  if (asked.catalogue !== undefined) env.PLUGTRAY_CATALOGUE = resolve(asked.catalogue)
  const since = Date.now()
  const child = spawn(program, [root], { stdio: 'inherit', env })
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal))
  return new Promise(done => {
    const failed = reason => {
      console.error(
        `The desktop window could not open (${reason}). The same app is served to your browser instead.`,
      )
      for (const signal of ['SIGINT', 'SIGTERM']) process.removeAllListeners(signal)
      done(false)
    }
    child.on('error', error => failed(error.message))
    child.on('exit', (status, signal) => {
      if (status !== null && status !== 0 && Date.now() - since < startingMs)
        return failed(`status ${status}`)
      process.exitCode = status ?? (signal ? 1 : 0)
      done(true)
    })
  })
}

/** In this process, so that Ctrl-C ends it as one expects. */
async function serveToBrowser() {
  const passedOn = [
    ...(asked.catalogue === undefined ? [] : ['--catalogue', asked.catalogue]),
    ...(asked.port === undefined ? [] : ['--port', asked.port]),
    ...(asked['no-open'] ? ['--no-open'] : []),
  ]
  process.argv.splice(2, process.argv.length, ...passedOn)
  await import(pathToFileURL(resolve(root, 'out/main/browser-host.js')).href)
}
