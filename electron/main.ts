// The desktop host: one window on the services, served by the same handler as the browser host.
import process from 'node:process'
import { app, dialog } from 'electron'
import { catalogueFolder } from './cli/catalogue-folder.ts'
import { guardContents } from './desktop/guard-contents.ts'
import { answerPage } from './desktop/ipc.ts'
import { setMenu } from './desktop/menu.ts'
import { denyPermissions } from './desktop/permissions.ts'
import { registerScheme, serveScheme } from './desktop/scheme.ts'
import { loadPage, openWindow } from './desktop/window.ts'
import { createHandler } from './handler.ts'
import { hostLog } from './log-file.ts'
import { loadPageFiles } from './page-files.ts'
import { appVersion, demoFolder, pageFolder } from './places-on-disk.ts'
import { FaultError } from './services/fault.ts'
import { createServices, type Services, unknownFault } from './services/services.ts'
import { openCatalogue } from './services/store/catalogue.ts'
import { secret } from './session-token.ts'

const log = hostLog(process.env)

/** Everything in the order it must happen; tests call it with a double of electron. */
export async function start(): Promise<void> {
  // Before ready: neither can be set afterwards.
  app.enableSandbox()
  registerScheme()
  guardContents(app)
  await app.whenReady()

  const services = await openServices()
  const token = secret()
  serveScheme(createHandler(services, { token, page: loadPageFiles(pageFolder) }))
  denyPermissions()
  setMenu()
  const window = openWindow()
  answerPage(window.webContents, { token, files: services.files })
  endWithWindow(services)
  await loadPage(window)
}

async function openServices(): Promise<Services> {
  const catalogue = await openCatalogue(catalogueFolder(undefined, process.env), { appVersion })
  const services = createServices(catalogue, { host: 'desktop', appVersion, log, demoFolder })
  if (catalogue.readOnly === null && catalogue.isNew) services.startDemo({ oneByOne: true })
  return services
}

/** The catalogue is closed before the program ends, so that the next one need not wait for its lock. */
function endWithWindow(services: Services): void {
  app.on('window-all-closed', () => app.quit())
  let closed = false
  app.on('will-quit', event => {
    if (closed) return
    event.preventDefault()
    closed = true
    void services.close().finally(() => app.quit())
  })
}

/** A person who started a window has no terminal to read: the reason is shown, then the program ends. */
function sayWhyNot(error: unknown): void {
  const fault = error instanceof FaultError ? error : unknownFault(error, log)
  dialog.showErrorBox('Plugtray could not start', fault.message)
  app.exit(1)
}

if (process.versions.electron !== undefined) start().catch(sayWhyNot)
