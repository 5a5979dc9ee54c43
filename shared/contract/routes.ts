// The routes beside the typed operations: raw bytes that should not travel as JSON. Same in both hosts.

export const rpcPrefix = '/rpc'
/** POST, application/octet-stream; answers {"ref": "<id>"}. */
export const uploadRoute = '/upload'
/** GET /photo/<sha256>/<kind> */
export const photoRoute = '/photo'
/** GET /export/<exportId>: a finished PDF. */
export const exportRoute = '/export'

/** thumb: 320 px; screen: 1600 px (long edges, sRGB JPEG, upright); full: every pixel, upright, as a browser can show it. */
export const photoKinds = ['thumb', 'screen', 'full'] as const
export type PhotoKind = (typeof photoKinds)[number]

export const sessionHeader = 'x-plugtray-session'
/** Percent-encoded file name of an upload. */
export const fileNameHeader = 'x-plugtray-name'

export const photoPath = (sha256: string, kind: PhotoKind): string => `${photoRoute}/${sha256}/${kind}`
