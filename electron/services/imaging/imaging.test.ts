import { readFile } from 'node:fs/promises'
import { afterAll, describe, expect, it } from 'vitest'
import sharp from 'sharp'
import { picture } from '../../../tests/fixtures/images/pictures.ts'
import { createImaging } from './imaging.ts'

const imaging = createImaging({ parallel: 2 })
afterAll(() => imaging.close())

const fixture = (name: string) => readFile(new URL(`../../../tests/fixtures/images/${name}`, import.meta.url))

async function sizesOf(bytes: Uint8Array) {
  const header = await imaging.header(bytes)
  return { header, ...(await imaging.sizes(bytes, header)) }
}

/** Mean of a 20 x 20 square as 8-bit sRGB. */
async function meanAt(jpeg: Uint8Array, left: number, top: number): Promise<number[]> {
  const { data, info } = await sharp(jpeg)
    .extract({ left, top, width: 20, height: 20 })
    .raw()
    .toBuffer({ resolveWithObject: true })
  const sums = [0, 0, 0]
  for (let i = 0; i < data.length; i += info.channels)
    for (let c = 0; c < 3; c++) sums[c] = (sums[c] ?? 0) + (data[i + c] ?? 0)
  return sums.map(sum => sum / 400)
}

type Triple = readonly [number, number, number]
const linear = (code: number): number =>
  code / 255 <= 0.04045 ? code / 255 / 12.92 : ((code / 255 + 0.055) / 1.055) ** 2.4

/** CIELAB (D65) of sRGB: IEC 61966-2-1 for the curve and matrix, CIE 15 for Lab. */
function lab([r = 0, g = 0, b = 0]: readonly number[]): Triple {
  const [R, G, B] = [linear(r), linear(g), linear(b)]
  const xyz = [
    (0.4124 * R + 0.3576 * G + 0.1805 * B) / 0.9505,
    0.2126 * R + 0.7152 * G + 0.0722 * B,
    (0.0193 * R + 0.1192 * G + 0.9505 * B) / 1.089,
  ]
  const [x = 0, y = 0, z = 0] = xyz.map(t =>
    t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29,
  )
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)]
}

const deltaE = (a: readonly number[], b: readonly number[]): number => {
  const [p, q] = [lab(a), lab(b)]
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])
}

/** The eight patches of the HEIC and AVIF fixtures, 80 px each, as the sRGB colours that they show. */
const patches: readonly Triple[] = [
  [200, 160, 120],
  [128, 128, 128],
  [230, 120, 40],
  [240, 240, 240],
  [30, 30, 30],
  [110, 70, 40],
  [200, 30, 30],
  [60, 140, 70],
]

async function patchErrors(jpeg: Uint8Array): Promise<number[]> {
  return Promise.all(
    patches.map(async (patch, i) =>
      deltaE(await meanAt(jpeg, (i % 4) * 80 + 30, Math.floor(i / 4) * 80 + 30), patch),
    ),
  )
}

describe('the two sizes', () => {
  it('are JPEG, 320 and 1600 px on the long edge, without metadata', async () => {
    const takenAt = { time: '2026:03:02 09:14:00' }
    const bytes = await picture(1, { width: 2400, height: 1500, takenAt }).jpeg().toBuffer()
    const { thumb, screen } = await sizesOf(bytes)
    expect(await sharp(screen).metadata()).toMatchObject({ format: 'jpeg', width: 1600, height: 1000 })
    expect(await sharp(thumb).metadata()).toMatchObject({ format: 'jpeg', width: 320, height: 200 })
    expect((await sharp(screen).metadata()).exif).toBeUndefined()
  })

  it('never enlarge', async () => {
    const { thumb, screen } = await sizesOf(await picture(1, { width: 100, height: 60 }).png().toBuffer())
    expect(await sharp(screen).metadata()).toMatchObject({ width: 100, height: 60 })
    expect(await sharp(thumb).metadata()).toMatchObject({ width: 100, height: 60 })
  })

  // Exif 3.0, tag Orientation: where the stored picture's upper left corner belongs in the upright one.
  const corners: Readonly<Record<number, [x: 'left' | 'right', y: 'top' | 'bottom', turned: boolean]>> = {
    1: ['left', 'top', false],
    2: ['right', 'top', false],
    3: ['right', 'bottom', false],
    4: ['left', 'bottom', false],
    5: ['left', 'top', true],
    6: ['right', 'top', true],
    7: ['right', 'bottom', true],
    8: ['left', 'bottom', true],
  }
  for (const format of ['jpeg', 'png', 'webp', 'tiff'] as const) {
    it.each([1, 2, 3, 4, 5, 6, 7, 8])(
      `turn a ${format} with orientation %i upright once`,
      async orientation => {
        const [x, y, turned] = corners[orientation] ?? ['left', 'top', false]
        const bytes = await picture(1, { width: 480, height: 320, orientation }).toFormat(format).toBuffer()
        const { header, screen } = await sizesOf(bytes)
        const [width, height] = turned ? [320, 480] : [480, 320]
        expect(header).toMatchObject({ width, height })
        expect(await sharp(screen).metadata()).toMatchObject({ width, height })
        const [red = 0, green = 0] = await meanAt(
          screen,
          x === 'left' ? 5 : width - 25,
          y === 'top' ? 5 : height - 25,
        )
        expect(red - green).toBeGreaterThan(150)
      },
    )
  }

  it.each(['jpeg', 'png', 'webp', 'tiff', 'avif'] as const)('convert a P3 %s to sRGB', async format => {
    const plain = picture(1, { width: 320, height: 160 })
    const wide = await picture(1, { width: 320, height: 160, profile: 'p3' })
      .toFormat(format, { quality: 95 })
      .toBuffer()
    const { header, screen } = await sizesOf(wide)
    expect(header.profile).toMatch(/p3/i)
    const shown = await meanAt(screen, 150, 70)
    const meant = await meanAt(await plain.png().toBuffer(), 150, 70)
    const raw = await meanAt(await sharp(wide, { ignoreIcc: true }).png().toBuffer(), 150, 70)
    expect(deltaE(shown, meant)).toBeLessThan(3)
    // The control: read without its profile the same file is visibly off.
    expect(deltaE(raw, meant)).toBeGreaterThan(3)
  })
})

describe('the header', () => {
  it.each(['jpeg', 'png', 'webp', 'avif'] as const)('of a %s tells the capture time', async format => {
    const takenAt = { time: '2026:03:02 09:14:05', subSec: '12', offset: '+01:00' }
    const header = await imaging.header(await picture(1, { takenAt }).toFormat(format).toBuffer())
    expect(header.takenAt).toEqual({ local: '2026-03-02T09:14:05', subSec: '12', offset: '+01:00' })
  })

  it('of an untagged picture names no profile', async () => {
    const header = await imaging.header(await picture(1).jpeg().toBuffer())
    expect(header).toEqual({
      format: 'jpeg',
      width: 96,
      height: 64,
      turned: false,
      weight: 1,
      assignProfile: false,
    })
  })
})

describe('HEIC', () => {
  it.each([
    ['srgb.heic', 'sRGB'],
    ['p3.heic', 'P3'],
    ['p3-10bit.heic', 'P3'],
    ['p3-nclx.heic', 'Display P3'],
    ['p3-nclx.avif', 'Display P3'],
  ])('%s comes out in the right colours, within 3 delta E*ab', async (name, profile) => {
    const { header, screen } = await sizesOf(await fixture(name))
    expect(header.profile).toContain(profile)
    expect(header).toMatchObject({ width: 320, height: 160 })
    for (const error of await patchErrors(screen)) expect(error).toBeLessThan(3)
  })

  it('would be wrong without the profile: the control of the test above', async () => {
    const bytes = await fixture('p3.heic')
    const { icc: _, ...untagged } = await imaging.header(bytes)
    const errors = await patchErrors((await imaging.sizes(bytes, untagged)).screen)
    expect(Math.max(...errors)).toBeGreaterThan(8)
  })

  it('is upright as decoded: an Exif orientation does not turn it again; the capture time is kept', async () => {
    const bytes = await fixture('srgb.heic')
    // The fixture says 6 in its Exif block, where its pixels are upright already.
    expect(bytes.includes(Buffer.from([0x12, 0x01, 0x03, 0x00, 0x01, 0x00, 0x00, 0x00, 0x06, 0x00]))).toBe(
      true,
    )
    const { header, screen } = await sizesOf(bytes)
    expect(header).toMatchObject({ width: 320, height: 160, turned: false })
    expect(header.takenAt).toEqual({ local: '2026-03-02T09:14:05', subSec: '120', offset: '-05:00' })
    expect(await sharp(screen).metadata()).toMatchObject({ width: 320, height: 160 })
  })

  it('as a full picture is a JPEG of every pixel', async () => {
    const bytes = await fixture('p3.heic')
    const full = await imaging.full(bytes, await imaging.header(bytes))
    expect(await sharp(full).metadata()).toMatchObject({ format: 'jpeg', width: 320, height: 160 })
    for (const error of await patchErrors(full)) expect(error).toBeLessThan(3)
  })
})

describe('a harmless flaw', () => {
  it('in the scan header of a baseline JPEG does not keep it out; the same flaw cut short does', async () => {
    const bytes = await picture(1, { width: 64, height: 64 }).jpeg().toBuffer()
    const flawed = Buffer.from(bytes)
    const scan = flawed.indexOf(Buffer.from([0xff, 0xda]))
    // Length, components, then Ss, Se, Ah/Al (T.81, B.2.3): a baseline scan says 0, 63, 0.
    const end = scan + 2 + flawed.readUInt16BE(scan + 2) - 2
    flawed[end] = 0
    await expect(sharp(flawed).raw().toBuffer()).rejects.toThrow(/Invalid SOS/)
    expect((await sizesOf(flawed)).thumb.length).toBeGreaterThan(100)
    await expect(sizesOf(flawed.subarray(0, flawed.length - 100))).rejects.toThrow(/cut short/)
  })
})
