// `npm start`: installs what is missing, builds if stale, and opens the app: a desktop window where Electron's runtime
// is there or can be fetched, else the same app from the browser host. Options: --catalogue DIR, --port N, --no-open,
// --browser (do not look for the desktop runtime), --desktop (insist on it).
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import process from 'node:process'
import { installPackages, requireNode, root } from './setup.js'

requireNode()
installPackages()
const { buildIfStale } = await import('./build-if-stale.js')
const { fetchRuntime } = await import('./desktop-runtime.js')
if (!buildIfStale()) {
  console.error('The build failed: see the lines above.')
  process.exit(1)
}

const args = process.argv.slice(2)
const insists = args.includes('--desktop')
const passedOn = args.filter(arg => arg !== '--desktop' && arg !== '--browser')
const runtime = args.includes('--browser') ? undefined : await fetchRuntime({ force: insists })
if (insists && !runtime) {
  console.error('The desktop runtime could not be fetched. `npm start` opens Plugtray in a browser instead.')
  process.exit(1)
}

function run(command, commandArgs) {
  const child = spawn(command, commandArgs, { cwd: root, stdio: 'inherit' })
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal))
  child.on('exit', code => process.exit(code ?? 1))
  child.on('error', error => {
    console.error(`${command}: ${error.message}`)
    process.exit(1)
  })
}

if (runtime) {
  const catalogue = passedOn.indexOf('--catalogue')
  if (catalogue >= 0) process.env.PLUGTRAY_CATALOGUE = passedOn[catalogue + 1]
  run(runtime, [root])
} else {
  console.error('No desktop runtime here: Plugtray opens in a browser on this computer.')
  run(process.execPath, [join(root, 'out', 'main', 'browser-host.js'), ...passedOn])
}
