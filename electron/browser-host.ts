// The app without the desktop runtime: the same services on 127.0.0.1, for a browser on this computer.
import process from 'node:process'
import { createInterface } from 'node:readline'
import { parseArgs } from 'node:util'
import { catalogueFolder } from './cli/catalogue-folder.ts'
import { serveBrowserHost } from './http/serve.ts'
import { hostLog } from './log-file.ts'
import { FaultError } from './services/fault.ts'

const usage = 'Usage: browser-host [--catalogue DIR] [--port N] [--no-open]'

async function run(): Promise<void> {
  const asked = readArguments()
  if (!asked) return
  const host = await serveBrowserHost({ ...asked, log: hostLog(process.env) })
  process.stdout.write(`Plugtray is at ${host.link}\n`)
  if (process.stdin.isTTY) {
    process.stdout.write(
      'The link works once, within a minute. Enter prints a new one, Ctrl-C ends Plugtray.\n',
    )
    createInterface({ input: process.stdin }).on('line', () => process.stdout.write(`${host.newLink()}\n`))
  }
  const stop = () => void host.close().then(() => process.exit(0))
  process.once('SIGINT', stop)
  process.once('SIGTERM', stop)
}

function readArguments(): { folder: string; port: number; open: boolean } | undefined {
  try {
    const { values } = parseArgs({
      options: { catalogue: { type: 'string' }, port: { type: 'string' }, 'no-open': { type: 'boolean' } },
    })
    const port = Number(values.port ?? 0)
    if (!Number.isInteger(port) || port < 0 || port > 65_535)
      throw new Error(`--port takes a whole number up to 65535, not "${values.port}".`)
    return {
      folder: catalogueFolder(values.catalogue, process.env),
      port,
      open: values['no-open'] !== true,
    }
  } catch (error) {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n${usage}\n`)
    process.exitCode = 2
    return undefined
  }
}

try {
  await run()
} catch (error) {
  if (!(error instanceof FaultError)) throw error
  process.stderr.write(`Plugtray could not start: ${error.message}\n`)
  process.exitCode = 1
}
