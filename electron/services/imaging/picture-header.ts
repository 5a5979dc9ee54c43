// What the header of a photo claims: size, profile, capture time. No pixel is decoded, and every limit is checked here.
import type { PhotoFormat, TakenAt } from '../../../shared/job/tray-schema.ts'
import { captureTime } from './capture-time.ts'
import { displayP3, displayP3Profile, widePrimaries } from './cicp.ts'
import { decodeFailure } from './decode-failure.ts'
import { formats } from './formats.ts'
import { iccName } from './icc-name.ts'
import { maxBytesHeldWhole, maxChannels, maxHeicPixels, maxPixels, pixelsPerTurn } from './picture-limits.ts'
import { RefusedPicture } from './refused-picture.ts'
import { openHeader } from './sharp-settings.ts'

export type PictureHeader = {
  format: PhotoFormat
  /** Pixels of the upright picture. */
  width: number
  height: number
  /** True when the stored pixels lie on their side or are mirrored, as the Exif orientation says. */
  turned: boolean
  /** Name of the embedded profile; absent means untagged. */
  profile?: string
  icc?: Uint8Array
  /** True when `icc` is not in the file but stands for the code numbers that are: the decoder does not know it. */
  assignProfile: boolean
  takenAt?: TakenAt
  /** Decoder turns it takes: more than one for a very large picture. */
  weight: number
}

const grouped = new Intl.NumberFormat('en-US')
const millions = (pixels: number): string => grouped.format(Math.round(pixels / 1e6))

function refuseTooLarge(name: string, width: number, height: number, most: number): never {
  const size = `${grouped.format(width)} x ${grouped.format(height)} pixels`
  throw new RefusedPicture(
    `This ${name} claims ${size}; at most ${millions(most)} megapixels are opened. Add a smaller copy.`,
  )
}

type Metadata = Awaited<ReturnType<ReturnType<typeof openHeader>['metadata']>>

/**
 * Bytes of what must be held at full size at once; 0 for what the decoder reads row by row. A turned JPEG is shrunk
 * before it is turned; other turned pictures are not. HEIC has its own limit.
 */
function heldWhole(format: PhotoFormat, metadata: Metadata, turned: boolean): number {
  const readByRow = format === 'jpeg' || ((format === 'png' || format === 'tiff') && !turned)
  if (format === 'heic' || (readByRow && !metadata.isProgressive)) return 0
  const bytesPerValue = format === 'jpeg' || metadata.depth !== 'uchar' ? 2 : 1
  return metadata.width * metadata.height * metadata.channels * bytesPerValue
}

/** Decoded, with a fourth channel, and once more as the TIFF that carries the profile. */
const copiesToAssign = 3

type Colour = Pick<PictureHeader, 'icc' | 'profile' | 'assignProfile'>

/** An embedded profile wins over code numbers. Numbers that are not converted are still said. */
async function colourOf(
  bytes: Uint8Array,
  format: PhotoFormat,
  icc: Uint8Array | undefined,
): Promise<Colour> {
  if (icc !== undefined) return { icc, profile: iccName(icc), assignProfile: false }
  const wide = format === 'heic' || format === 'avif' ? widePrimaries(bytes) : null
  if (wide === null) return { assignProfile: false }
  if (wide.primaries !== displayP3) return { profile: `${wide.name} (shown as sRGB)`, assignProfile: false }
  return { icc: await displayP3Profile(), profile: wide.name, assignProfile: true }
}

/** `bytes` is the whole file, `format` what its content says it is. Throws RefusedPicture. */
export async function pictureHeader(bytes: Uint8Array, format: PhotoFormat): Promise<PictureHeader> {
  const { name } = formats[format]
  let metadata: Metadata
  try {
    metadata = await openHeader(bytes).metadata()
  } catch (error) {
    throw decodeFailure(error, name)
  }
  const { width, height } = metadata.autoOrient
  const most = format === 'heic' ? maxHeicPixels : maxPixels
  if (width * height > most) refuseTooLarge(name, width, height, most)
  if (metadata.channels > maxChannels) {
    throw new RefusedPicture(
      `This ${name} has ${metadata.channels} channels a pixel and is no photo. Export it as JPEG.`,
    )
  }
  const turned = (metadata.orientation ?? 1) > 1
  const colour = await colourOf(bytes, format, metadata.icc)
  const whole = heldWhole(format, metadata, turned) * (colour.assignProfile ? copiesToAssign : 1)
  if (whole > maxBytesHeldWhole) {
    refuseTooLarge(name, width, height, Math.floor((width * height * maxBytesHeldWhole) / whole))
  }
  const exif = format === 'tiff' ? bytes : metadata.exif
  const takenAt = exif === undefined ? undefined : captureTime(exif)
  return {
    format,
    width,
    height,
    turned,
    weight: Math.ceil((width * height) / pixelsPerTurn),
    ...colour,
    ...(takenAt === undefined ? {} : { takenAt }),
  }
}
