// Photos for the intake bench: 12 megapixels each, as large and as hard to decode as a phone's.
import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'

const width = 4000
const height = 3000

/** Soft shapes with sensor-like grain over them: about 4 MB as JPEG of quality 90. */
async function plausible(seed: number): Promise<Buffer> {
  const small = { width: 40, height: 30 }
  const shapes = Buffer.alloc(small.width * small.height * 3)
  let state = seed + 1
  for (let i = 0; i < shapes.length; i++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    shapes[i] = 60 + ((state >>> 24) % 130)
  }
  const ground = await sharp(shapes, { raw: { ...small, channels: 3 } })
    .resize(width, height, { kernel: 'cubic', fit: 'fill' })
    .raw()
    .toBuffer()
  const noise = { type: 'gaussian' as const, mean: 128, sigma: 34 }
  const grain = await sharp({ create: { width, height, channels: 3, background: '#808080', noise } })
    .raw()
    .toBuffer()
  return sharp(ground, { raw: { width, height, channels: 3 } })
    .composite([{ input: grain, raw: { width, height, channels: 3 }, blend: 'soft-light' }])
    .jpeg({ quality: 90 })
    .toBuffer()
}

/** A comment segment behind the start of the file: the same picture, but a file of its own. */
function withComment(jpeg: Buffer, text: string): Buffer {
  const comment = Buffer.from(text, 'latin1')
  const head = Buffer.from([0xff, 0xfe, 0, comment.length + 2])
  return Buffer.concat([jpeg.subarray(0, 2), head, comment, jpeg.subarray(2)])
}

export type BenchPhoto = { path: string; name: string; bytes: number }

/** `count` files that all differ, of `distinct` pictures. */
export async function writePhotos(folder: string, count: number, distinct: number): Promise<BenchPhoto[]> {
  const photos: BenchPhoto[] = []
  for (let picture = 0; picture < Math.min(distinct, count); picture++) {
    const jpeg = await plausible(picture)
    for (let i = picture; i < count; i += distinct) {
      const name = `IMG_${String(i).padStart(4, '0')}.jpg`
      const bytes = withComment(jpeg, `bench photo ${i}`)
      await writeFile(join(folder, name), bytes)
      photos.push({ path: join(folder, name), name, bytes: bytes.length })
    }
  }
  return photos.toSorted((a, b) => a.name.localeCompare(b.name))
}
