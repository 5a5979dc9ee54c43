// The desktop host: one window on the services, served by the same handler as the browser host.
import process from 'node:process'
import { app } from 'electron'
import { catalogueFolder } from './cli/catalogue-folder.ts'
import { guardContents } from './desktop/guard-contents.ts'
import { answerPage } from './desktop/ipc.ts'
import { denyPermissions } from './desktop/permissions.ts'
import { registerScheme, serveScheme } from './desktop/scheme.ts'
import { openWindow } from './desktop/window.ts'
import { createHandler } from './handler.ts'
import { secret } from './http/one-time-code.ts'
import { loadPageFiles } from './page-files.ts'
import { appVersion, demoFolder, pageFolder } from './places-on-disk.ts'
import { stderrLog } from './services/log.ts'
import { createServices } from './services/services.ts'
import { openCatalogue } from './services/store/catalogue.ts'

/** Everything in the order it must happen; tests call it with a double of electron. */
export async function start(): Promise<void> {
  // Before ready: neither can be set afterwards.
  app.enableSandbox()
  registerScheme()
  guardContents(app)
  await app.whenReady()

  const catalogue = await openCatalogue(catalogueFolder(undefined, process.env), { appVersion })
  const services = createServices(catalogue, { host: 'desktop', appVersion, log: stderrLog, demoFolder })
  const token = secret()
  serveScheme(createHandler(services, { token, page: loadPageFiles(pageFolder) }))
  denyPermissions()
  answerPage({ token, files: services.files })
  if (catalogue.readOnly === null && catalogue.isNew) services.startDemo()
  openWindow()

  app.on('window-all-closed', () => app.quit())
  let closed = false
  app.on('will-quit', event => {
    if (closed) return
    event.preventDefault()
    closed = true
    void services.close().finally(() => app.quit())
  })
}

if (process.versions.electron !== undefined) await start()
