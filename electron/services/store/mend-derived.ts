// Puts the derived pictures right: those without a whole original go, missing ones are made again.
import { RefusedPicture } from '../imaging/refused-picture.ts'
import type { Checking } from './checking.ts'
import type { CheckedPhotos } from './check-photos.ts'
import { isLeftOver } from './durable-file.ts'
import { openPhotoStore, type PhotoStore } from './photos.ts'

const settledMs = 60_000

export async function mendDerived(checking: Checking, folder: string, found: CheckedPhotos): Promise<void> {
  await removeOrphans(checking, found)
  const photos = openPhotoStore(folder, checking.disk)
  try {
    for (const sha256 of found.whole) {
      checking.pause()
      if (!(await photos.hasSizes(sha256))) await makeSizes(checking, photos, sha256, found)
    }
  } finally {
    await photos.close()
  }
}

async function removeOrphans({ disk, at, names }: Checking, { whole }: CheckedPhotos): Promise<void> {
  for (const part of await names('derived'))
    for (const file of await names(`derived/${part}`)) {
      const path = at('derived', part, file)
      const stamp = await disk.stamp(path)
      // A young temporary file may be a picture that is being made just now.
      const isWaste = isLeftOver(file) && stamp !== null && Date.now() - stamp.mtimeMs > settledMs
      if (isWaste || (stamp !== null && !isLeftOver(file) && !whole.has(file.slice(0, 64))))
        await disk.remove(path)
    }
}

async function makeSizes(
  checking: Checking,
  photos: PhotoStore,
  sha256: string,
  found: CheckedPhotos,
): Promise<void> {
  const { bytes } = await photos.open(sha256)
  try {
    await photos.putSizes(sha256, await photos.imaging.sizes(bytes, await photos.imaging.header(bytes)))
    checking.say(
      `derived/${sha256.slice(0, 2)}/${sha256}`,
      'missing',
      'Small pictures were missing.',
      'They were made again.',
      true,
    )
  } catch (error) {
    if (!(error instanceof RefusedPicture)) throw error
    const hint = 'The original is unchanged, but cannot be shown.'
    checking.say(found.names.get(sha256) ?? sha256, 'damaged', error.why, hint)
  }
}
