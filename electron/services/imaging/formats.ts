// The six formats that go in: what people call them, the extension in the store, the content type.
import type { PhotoFormat } from '../../../shared/job/tray-schema.ts'

type FormatFacts = {
  name: string
  extension: string
  type: string
  /** Whether any browser that the app runs in shows the file as it is. */
  browserShows: boolean
}

export const formats: Readonly<Record<PhotoFormat, FormatFacts>> = {
  jpeg: { name: 'JPEG', extension: 'jpg', type: 'image/jpeg', browserShows: true },
  png: { name: 'PNG', extension: 'png', type: 'image/png', browserShows: true },
  webp: { name: 'WebP', extension: 'webp', type: 'image/webp', browserShows: true },
  avif: { name: 'AVIF', extension: 'avif', type: 'image/avif', browserShows: true },
  tiff: { name: 'TIFF', extension: 'tif', type: 'image/tiff', browserShows: false },
  heic: { name: 'HEIC', extension: 'heic', type: 'image/heic', browserShows: false },
}
