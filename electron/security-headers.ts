// Headers on every answer of both hosts. Nothing is loaded from anywhere else, nothing inline runs.
import { createHash } from 'node:crypto'

/**
 * The two style elements that the page's widget library (react-aria 1.22) writes at run time, letter by letter: touch
 * handling of buttons, and no scrolling behind a dialog on a telephone. Their hashes spare us 'unsafe-inline'. A newer
 * library may word them otherwise: then the browser suite reports the violation.
 */
const injectedStyles = [
  '@layer {\n  [data-react-aria-pressable] {\n    touch-action: pan-x pan-y pinch-zoom;\n  }\n}',
  '@layer {\n  * {\n    overscroll-behavior: contain;\n  }\n}',
]
const hashes = injectedStyles.map(text => `'sha256-${createHash('sha256').update(text).digest('base64')}'`)

export const contentPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  `style-src 'self' ${hashes.join(' ')}`,
  "img-src 'self' blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "object-src 'none'",
  "require-trusted-types-for 'script'",
].join('; ')

const off = [
  'camera',
  'microphone',
  'geolocation',
  'usb',
  'serial',
  'hid',
  'midi',
  'payment',
  'display-capture',
]

export const securityHeaders: Readonly<Record<string, string>> = {
  'content-security-policy': contentPolicy,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': off.map(name => `${name}=()`).join(', '),
}
