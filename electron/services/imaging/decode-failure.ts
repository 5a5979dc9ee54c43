// Turns what a decoder says about a bad picture into the one line a person reads.
import { decodeSeconds } from './picture-limits.ts'
import { RefusedPicture } from './refused-picture.ts'

export const again = 'Copy it from the camera or phone again.'

const cutShort =
  /premature|truncat|end of (file|data|image|stream)|unexpected eof|outside of file|bad seek|too short|unable to parse image|read past|not enough (data|image)/i
const tooSlow = /timeout/i
const tooLarge = /pixel limit|exceeds|maximum supported|too (large|big|many)|memory allocation|out of memory/i

/** `formatName` as people write it: "JPEG". */
export function decodeFailure(error: unknown, formatName: string): RefusedPicture {
  if (error instanceof RefusedPicture) return error
  const said = error instanceof Error ? error.message : String(error)
  if (tooSlow.test(said)) {
    return new RefusedPicture(
      `This ${formatName} took longer than ${decodeSeconds} seconds to open. Add a smaller copy.`,
    )
  }
  if (cutShort.test(said))
    return new RefusedPicture(`This ${formatName} is cut short: part of the picture is missing. ${again}`)
  if (tooLarge.test(said))
    return new RefusedPicture(`This ${formatName} holds more than this app opens. Add a smaller copy.`)
  return new RefusedPicture(`This ${formatName} is damaged and cannot be opened. ${again}`)
}
