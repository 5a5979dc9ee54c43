// The pictures made from an original: thumb, screen, and full where a browser cannot show the original itself.
// They may be deleted at any time and are made again when asked for.
import { join } from 'node:path'
import type { PhotoKind } from '../../../shared/contract/routes.ts'
import { FaultError } from '../fault.ts'
import { formats } from '../imaging/formats.ts'
import type { Imaging } from '../imaging/imaging.ts'
import { RefusedPicture } from '../imaging/refused-picture.ts'
import type { Sizes } from '../imaging/sizes.ts'
import type { Disk } from './disk.ts'
import { onDisk } from './disk-fault.ts'
import type { Originals } from './originals.ts'
import { derivedName } from './photo-paths.ts'
import { placeFile } from './place-file.ts'
import { sharedWork } from './shared-work.ts'

/** A picture to send: a file to stream, or bytes where it could not be kept. `type` is its content type. */
export type Picture = { type: string; path: string } | { type: string; bytes: Uint8Array }

export type DerivedPictures = {
  hasSizes: (sha256: string) => Promise<boolean>
  putSizes: (sha256: string, sizes: Sizes) => Promise<void>
  /** Made from the original if it is not there yet. Throws NOT_FOUND or DAMAGED. */
  derived: (sha256: string, kind: PhotoKind) => Promise<Picture>
}

type Ground = { folder: string; disk: Disk; imaging: Imaging; originals: Originals; readOnly: boolean }

const { type } = formats.jpeg

export function derivedPictures({ folder, disk, imaging, originals, readOnly }: Ground): DerivedPictures {
  const at = (name: string) => join(folder, name)
  const shareSizes = sharedWork<Sizes>()
  const shareFull = sharedWork<Uint8Array>()

  const isThere = (name: string) => onDisk(name, async () => ((await disk.stamp(at(name)))?.size ?? 0) > 0)

  async function keep(sha256: string, kind: PhotoKind, bytes: Uint8Array): Promise<void> {
    const name = derivedName(sha256, kind)
    await onDisk(name, () => placeFile(disk, folder, name, bytes))
  }

  async function putSizes(sha256: string, { screen, thumb }: Sizes): Promise<void> {
    await keep(sha256, 'screen', screen)
    await keep(sha256, 'thumb', thumb)
  }

  /** A full disk must not keep anyone from looking at a photo: it is then made anew each time. */
  async function keepIfPossible(write: () => Promise<void>): Promise<void> {
    if (readOnly) return
    try {
      await write()
    } catch (error) {
      if (!(error instanceof FaultError)) throw error
    }
  }

  const makeSizes = (sha256: string): Promise<Sizes> =>
    shareSizes(sha256, async () => {
      const sizes = await fromOriginal(sha256, (bytes, header) => imaging.sizes(bytes, header))
      await keepIfPossible(() => putSizes(sha256, sizes))
      return sizes
    })

  const makeFull = (sha256: string): Promise<Uint8Array> =>
    shareFull(sha256, async () => {
      const full = await fromOriginal(sha256, (bytes, header) => imaging.full(bytes, header))
      await keepIfPossible(() => keep(sha256, 'full', full))
      return full
    })

  async function fromOriginal<T>(
    sha256: string,
    make: (bytes: Uint8Array, header: Awaited<ReturnType<Imaging['header']>>) => Promise<T>,
  ): Promise<T> {
    const { bytes } = await originals.open(sha256)
    try {
      return await make(bytes, await imaging.header(bytes))
    } catch (error) {
      if (!(error instanceof RefusedPicture)) throw error
      const hint = 'The original is kept. Save it elsewhere and open it there.'
      throw new FaultError('DAMAGED', { what: error.why, where: `photo ${sha256}`, hint }, { cause: error })
    }
  }

  /** Null when a browser would not show the original as it should be seen. Browsers turn JPEG upright themselves. */
  async function originalAsFull(sha256: string): Promise<Picture | null> {
    const found = await originals.find(sha256)
    if (!formats[found.format].browserShows) return null
    const picture = { type: formats[found.format].type, path: found.path }
    if (found.format === 'jpeg') return picture
    const { turned } = await fromOriginal(sha256, async (_, header) => header)
    return turned ? null : picture
  }

  return {
    hasSizes: async sha256 =>
      (await isThere(derivedName(sha256, 'screen'))) && (await isThere(derivedName(sha256, 'thumb'))),
    putSizes,
    async derived(sha256, kind) {
      const name = derivedName(sha256, kind)
      if (await isThere(name)) return { type, path: at(name) }
      if (kind !== 'full') {
        const sizes = await makeSizes(sha256)
        return { type, bytes: sizes[kind] }
      }
      return (await originalAsFull(sha256)) ?? { type, bytes: await makeFull(sha256) }
    },
  }
}
