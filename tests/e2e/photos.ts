// Photos made for a test: each with its own colour, name and capture time.
import sharp from 'sharp'

export type TestPhoto = { name: string; bytes: Buffer }

/** One JPEG a second apart, in a colour of its own. */
export async function testPhotos(count: number, prefix = 'IMG'): Promise<TestPhoto[]> {
  return Promise.all(
    Array.from({ length: count }, async (_, i) => {
      const background = { r: 90 + i * 15, g: 160 - i * 10, b: 120 }
      const bytes = await sharp({ create: { width: 800, height: 600, channels: 3, background } })
        .withExif({
          IFD2: {
            DateTimeOriginal: `2026:03:02 09:14:${String(i).padStart(2, '0')}`,
            SubSecTimeOriginal: '120',
          },
        })
        .jpeg()
        .toBuffer()
      return { name: `${prefix}_${String(i + 1).padStart(4, '0')}.jpg`, bytes }
    }),
  )
}
