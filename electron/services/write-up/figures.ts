// Photos with captions, laid out in rows that never split over two pages.
import { gap, ink, need, type Sheet } from './sheet.ts'

export type Figure = {
  /** Upright JPEG, already as small as print needs. */
  jpeg: Uint8Array
  width: number
  height: number
  caption: string
  /** Spoken description. */
  alt: string
}

const between = 10
const captionSize = 8

/** Pictures keep their proportions inside equal frames, so that a row reads like the tray. */
export function figures(sheet: Sheet, pictures: readonly Figure[], perRow: number): void {
  const { doc } = sheet
  const frame = (sheet.width - between * (perRow - 1)) / perRow
  const frameHeight = frame * 0.75
  for (let start = 0; start < pictures.length; start += perRow) {
    const row = pictures.slice(start, start + perRow)
    doc.font('regular').fontSize(captionSize)
    const captionHeight = Math.max(...row.map(one => doc.heightOfString(one.caption, { width: frame })))
    need(sheet, frameHeight + captionHeight + 8)
    const y = doc.y
    for (const [i, picture] of row.entries()) {
      const x = sheet.left + i * (frame + between)
      const scale = Math.min(frame / picture.width, frameHeight / picture.height)
      const width = picture.width * scale
      const height = picture.height * scale
      const element = doc.struct('Figure', { alt: picture.alt })
      sheet.parent.add(element)
      element.add(() => {
        doc.image(Buffer.from(picture.jpeg), x + (frame - width) / 2, y + (frameHeight - height) / 2, {
          width,
          height,
        })
      })
      element.add(
        doc.struct('Caption', {}, () => {
          doc.font('regular').fontSize(captionSize).fillColor(ink.text)
          doc.text(picture.caption, x, y + frameHeight + 3, { width: frame })
        }),
      )
      element.end()
    }
    doc.x = sheet.left
    doc.y = y + frameHeight + captionHeight + 6
    gap(sheet, 6)
  }
}
