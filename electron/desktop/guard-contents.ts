// No way out of our page: no other address, no new window, no embedded guest.
import type { App } from 'electron'
import { isOurs } from './origin.ts'

export function guardContents(app: Pick<App, 'on'>): void {
  app.on('web-contents-created', (_, contents) => {
    const refuseForeign = (event: { preventDefault: () => void; url: string }) => {
      if (!isOurs(event.url)) event.preventDefault()
    }
    contents.on('will-navigate', refuseForeign)
    contents.on('will-frame-navigate', refuseForeign)
    contents.on('will-redirect', refuseForeign)
    contents.on('will-attach-webview', event => event.preventDefault())
    contents.setWindowOpenHandler(() => ({ action: 'deny' }))
  })
}
