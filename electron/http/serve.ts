// The browser host put together: catalogue, services, handler, loopback server, and a window where one can be opened.
import { createHandler } from '../handler.ts'
import { loadPageFiles } from '../page-files.ts'
import { appVersion, demoFolder, pageFolder } from '../places-on-disk.ts'
import { stderrLog } from '../services/log.ts'
import { createServices } from '../services/services.ts'
import { openCatalogue } from '../services/store/catalogue.ts'
import { secret } from './one-time-code.ts'
import { openAppWindow } from './app-window.ts'
import { startServer } from './server.ts'

export type BrowserHost = {
  /** Works once, within a minute. */
  link: string
  close: () => Promise<void>
}

export type BrowserHostOptions = {
  folder: string
  port: number
  open: boolean
}

/** An empty catalogue is filled with the demonstration jobs, so that there is something to look at. */
export async function serveBrowserHost({ folder, port, open }: BrowserHostOptions): Promise<BrowserHost> {
  const catalogue = await openCatalogue(folder, { appVersion })
  const services = createServices(catalogue, { host: 'browser', appVersion, log: stderrLog, demoFolder })
  const token = secret()
  const server = await startServer({
    handler: createHandler(services, { token, page: loadPageFiles(pageFolder) }),
    token,
    port,
  })
  if (catalogue.readOnly === null && catalogue.isNew) services.startDemo()
  const link = server.link()
  const endWindow = open ? openAppWindow(server.link()) : () => {}
  return {
    link,
    async close() {
      endWindow()
      await server.close()
      await services.close()
    },
  }
}
