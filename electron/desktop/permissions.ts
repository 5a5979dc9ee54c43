// The page needs none of what a browser may ask for, but the clipboard for text it was told to copy.
import { session } from 'electron'
import { isOurs } from './origin.ts'

const allowed = new Set(['clipboard-sanitized-write'])

export function denyPermissions(): void {
  const { defaultSession } = session
  defaultSession.setPermissionRequestHandler((contents, permission, answer) =>
    answer(allowed.has(permission) && isOurs(contents.getURL())),
  )
  defaultSession.setPermissionCheckHandler((_, permission, from) => allowed.has(permission) && isOurs(from))
  defaultSession.setDevicePermissionHandler(() => false)
  defaultSession.setDisplayMediaRequestHandler((_, answer) => answer({}))
}
