// The page needs none of what a browser may ask for, but to put text on the clipboard when a person presses "copy".
import { session } from 'electron'
import { isOurs } from './origin.ts'

/** Writing plain text only, and only after a press; reading the clipboard is another permission and denied. */
const allowed = 'clipboard-sanitized-write'

export function denyPermissions(): void {
  const { defaultSession } = session
  defaultSession.setPermissionRequestHandler((_, permission, answer, { isMainFrame, requestingUrl }) =>
    answer(permission === allowed && isMainFrame && isOurs(requestingUrl)),
  )
  defaultSession.setPermissionCheckHandler(
    (_, permission, requestingOrigin, { isMainFrame }) =>
      permission === allowed && isMainFrame && isOurs(requestingOrigin),
  )
  defaultSession.setDevicePermissionHandler(() => false)
  defaultSession.setDisplayMediaRequestHandler((_, answer) => answer({}))
}
