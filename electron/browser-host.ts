// The app without the desktop runtime: the same services on 127.0.0.1, for a browser on this computer.
import process from 'node:process'
import { parseArgs } from 'node:util'
import { catalogueFolder } from './cli/catalogue-folder.ts'
import { serveBrowserHost } from './http/serve.ts'
import { FaultError } from './services/fault.ts'

const { values } = parseArgs({
  options: { catalogue: { type: 'string' }, port: { type: 'string' }, 'no-open': { type: 'boolean' } },
})

try {
  const host = await serveBrowserHost({
    folder: catalogueFolder(values.catalogue, process.env),
    port: Number(values.port ?? 0),
    open: values['no-open'] !== true,
  })
  process.stdout.write(`Plugtray is at ${host.link}\n`)
  const stop = () => void host.close().then(() => process.exit(0))
  process.once('SIGINT', stop)
  process.once('SIGTERM', stop)
} catch (error) {
  if (!(error instanceof FaultError)) throw error
  process.stderr.write(`Plugtray could not start: ${error.message}\n`)
  process.exitCode = 1
}
