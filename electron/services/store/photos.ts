// The photos of a catalogue, as the rest of the app sees them: originals, and the pictures made from them.
import type { PhotoKind } from '../../../shared/contract/routes.ts'
import type { PhotoFormat } from '../../../shared/job/tray-schema.ts'
import { FaultError } from '../fault.ts'
import { createImaging, type Imaging } from '../imaging/imaging.ts'
import type { Sizes } from '../imaging/sizes.ts'
import { derivedPictures, type Picture } from './derived-pictures.ts'
import { type Disk, realDisk } from './disk.ts'
import { type FoundOriginal, originalsIn } from './originals.ts'
import { requireSha256 } from './photo-paths.ts'

export type PhotoStore = {
  readonly imaging: Imaging
  /**
   * Keeps an original; durable when it returns. Bytes that are there already are verified, and put right if they were
   * damaged. Throws FaultError: DISK, READ_ONLY.
   */
  put: (bytes: Uint8Array, sha256: string, format: PhotoFormat) => Promise<void>
  has: (sha256: string) => Promise<boolean>
  /** Where the original lies. Throws NOT_FOUND. */
  find: (sha256: string) => Promise<FoundOriginal>
  /** The original's bytes, verified. Throws NOT_FOUND, DAMAGED. */
  open: (sha256: string) => Promise<{ bytes: Uint8Array; format: PhotoFormat }>
  hasSizes: (sha256: string) => Promise<boolean>
  putSizes: (sha256: string, sizes: Sizes) => Promise<void>
  /** A picture for the page, made from the original if it is not there yet. Throws NOT_FOUND, DAMAGED. */
  derived: (sha256: string, kind: PhotoKind) => Promise<Picture>
  close: () => Promise<void>
}

export type PhotoStoreOptions = { imaging?: Imaging; readOnly?: boolean }

/** The folders `photos/` and `derived/` of the catalogue in `folder`. Every name is checked to be a SHA-256 first. */
export function openPhotoStore(
  folder: string,
  disk: Disk = realDisk,
  options: PhotoStoreOptions = {},
): PhotoStore {
  const { readOnly = false } = options
  const imaging = options.imaging ?? createImaging()
  const originals = originalsIn(folder, disk)
  const pictures = derivedPictures({ folder, disk, imaging, originals, readOnly })

  const writable = (): void => {
    if (!readOnly) return
    const hint = 'Close the other window that has the catalogue open.'
    throw new FaultError('READ_ONLY', { what: 'The catalogue can only be read here.', where: 'photos', hint })
  }

  const named =
    <A extends unknown[], R>(work: (sha256: string, ...rest: A) => Promise<R>) =>
    async (sha256: string, ...rest: A): Promise<R> => {
      requireSha256(sha256)
      return work(sha256, ...rest)
    }

  return {
    imaging,
    async put(bytes, sha256, format) {
      requireSha256(sha256)
      writable()
      await originals.put(bytes, sha256, format)
    },
    has: named(originals.has),
    find: named(originals.find),
    open: named(originals.open),
    hasSizes: named(pictures.hasSizes),
    putSizes: named(async (sha256, sizes: Sizes) => {
      writable()
      await pictures.putSizes(sha256, sizes)
    }),
    derived: named(pictures.derived),
    close: () => imaging.close(),
  }
}
