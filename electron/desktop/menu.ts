// The application menu: editing and the window. Electron's own menu would lead to addresses on the internet.
import { Menu } from 'electron'

export function setMenu(platform: NodeJS.Platform = process.platform): void {
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([
      ...(platform === 'darwin' ? [{ role: 'appMenu' as const }] : []),
      { role: 'editMenu' },
      {
        label: 'View',
        submenu: [
          { role: 'resetZoom' },
          { role: 'zoomIn' },
          { role: 'zoomOut' },
          { type: 'separator' },
          { role: 'togglefullscreen' },
        ],
      },
      { role: 'windowMenu' },
    ]),
  )
}
