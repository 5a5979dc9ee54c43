// Headers on every answer of both hosts. Nothing is loaded from anywhere else, nothing inline runs.

// React Aria writes a style element for touch handling at run time; it has no nonce hook for it, so styles (only
// styles) may be inline. Scripts may not, ever.
const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
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
  'content-security-policy': policy,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': off.map(name => `${name}=()`).join(', '),
}
