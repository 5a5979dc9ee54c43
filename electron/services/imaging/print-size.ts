// A photo as small as print needs: 900 px on the long edge, JPEG without any metadata.
import { readFile } from 'node:fs/promises'
import type { Picture } from '../store/derived-pictures.ts'
import { openPicture } from './sharp-settings.ts'

const printEdge = 900

export async function printSize(picture: Picture): Promise<Uint8Array> {
  const bytes = 'bytes' in picture ? picture.bytes : await readFile(picture.path)
  return openPicture(bytes)
    .resize({ width: printEdge, height: printEdge, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 82 })
    .toBuffer()
}

/** Width and height of a JPEG of ours. */
export async function sizeOf(jpeg: Uint8Array): Promise<{ width: number; height: number }> {
  const { width, height } = await openPicture(jpeg).metadata()
  return { width, height }
}
