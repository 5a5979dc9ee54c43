// The browser host put together: catalogue, services, handler, loopback server, and a window where one can be opened.
import { createHandler } from '../handler.ts'
import { loadPageFiles } from '../page-files.ts'
import { appVersion, demoFolder, pageFolder } from '../places-on-disk.ts'
import { FaultError } from '../services/fault.ts'
import { type Log, stderrLog } from '../services/log.ts'
import { createServices } from '../services/services.ts'
import { openCatalogue } from '../services/store/catalogue.ts'
import { secret } from '../session-token.ts'
import { openAppWindow } from './app-window.ts'
import { startServer } from './server.ts'

export type BrowserHost = {
  /** Works once, within a minute. */
  link: string
  /** Another one. */
  newLink: () => string
  close: () => Promise<void>
}

export type BrowserHostOptions = {
  folder: string
  /** 0: any free one. */
  port: number
  open: boolean
  log?: Log
}

/** An empty catalogue is filled with the demonstration jobs, so that there is something to look at. Throws FaultError. */
export async function serveBrowserHost(options: BrowserHostOptions): Promise<BrowserHost> {
  const { folder, port, open, log = stderrLog } = options
  const catalogue = await openCatalogue(folder, { appVersion })
  const services = createServices(catalogue, { host: 'browser', appVersion, log, demoFolder })
  const token = secret()
  const handler = createHandler(services, { token, page: loadPageFiles(pageFolder) })
  try {
    const server = await startServer({ handler, token, port })
    if (catalogue.readOnly === null && catalogue.isNew) services.startDemo({ oneByOne: true })
    const endWindow = open ? openAppWindow(server.link()) : () => {}
    return {
      link: server.link(),
      newLink: server.link,
      async close() {
        endWindow()
        await server.close()
        await services.close()
      },
    }
  } catch (error) {
    await services.close()
    throw portFault(error, port)
  }
}

function portFault(error: unknown, port: number): unknown {
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  if (code !== 'EADDRINUSE' && code !== 'EACCES') return error
  return new FaultError(
    'REFUSED',
    {
      what: code === 'EACCES' ? 'The system does not give out this port.' : 'Another program uses this port.',
      where: `port ${port}`,
      hint: 'Name another one with --port, or none for any that is free.',
    },
    { cause: error },
  )
}
