// Where a photo lies inside the catalogue: originals by their SHA-256, small pictures made from them beside in `derived/`.
import type { PhotoKind } from '../../../shared/contract/routes.ts'
import type { PhotoFormat } from '../../../shared/job/tray-schema.ts'
import { FaultError } from '../fault.ts'
import { formats } from '../imaging/formats.ts'

/** Both relative to the catalogue, with forward slashes: also how faults name them. */
export const originalName = (sha256: string, format: PhotoFormat): string =>
  `photos/${sha256.slice(0, 2)}/${sha256}.${formats[format].extension}`

export const derivedName = (sha256: string, kind: PhotoKind): string =>
  `derived/${sha256.slice(0, 2)}/${sha256}.${kind}.jpg`

/** No path is ever built from anything but 64 hexadecimal digits. */
export function requireSha256(sha256: string): void {
  if (/^[0-9a-f]{64}$/.test(sha256)) return
  throw new FaultError('NOT_FOUND', {
    what: 'This is no name of a photo.',
    where: '',
    hint: 'Open the job again.',
  })
}
