// Tables with a repeated header; a row is never split over two pages.
import { gap, ink, need, type Sheet } from './sheet.ts'

export type Column = { title: string; width: number; align?: 'left' | 'right' }

const size = 8.5
const padding = 3

/** Column widths are shares of the page width. Cells are plain text; long ones wrap. */
export function table(sheet: Sheet, columns: readonly Column[], rows: readonly (readonly string[])[]): void {
  const { doc } = sheet
  const total = columns.reduce((sum, column) => sum + column.width, 0)
  const widths = columns.map(column => (column.width / total) * sheet.width)
  const element = doc.struct('Table')
  sheet.parent.add(element)

  const heightOf = (cells: readonly string[], face: string) => {
    doc.font(face).fontSize(size)
    return (
      2 * padding +
      Math.max(
        ...cells.map((cell, i) => doc.heightOfString(cell || ' ', { width: (widths[i] ?? 0) - 2 * padding })),
      )
    )
  }
  const drawRow = (cells: readonly string[], kind: 'TH' | 'TD', height: number) => {
    const face = kind === 'TH' ? 'bold' : 'regular'
    const y = doc.y
    doc.markContent('Artifact', { type: 'Layout' })
    if (kind === 'TH') doc.rect(sheet.left, y, sheet.width, height).fill(ink.fill)
    doc
      .moveTo(sheet.left, y + height)
      .lineTo(sheet.right, y + height)
      .lineWidth(0.4)
      .strokeColor(ink.line)
      .stroke()
    doc.endMarkedContent()
    const row = doc.struct('TR')
    element.add(row)
    let x = sheet.left
    for (const [i, column] of columns.entries()) {
      const width = widths[i] ?? 0
      const left = x
      row.add(
        doc.struct(kind, {}, () => {
          doc.font(face).fontSize(size).fillColor(ink.text)
          doc.text(cells[i] || ' ', left + padding, y + padding, {
            width: width - 2 * padding,
            align: column.align ?? 'left',
          })
        }),
      )
      x += width
    }
    row.end()
    doc.y = y + height
    doc.x = sheet.left
  }

  const titles = columns.map(column => column.title)
  const headerHeight = heightOf(titles, 'bold')
  const firstRow = rows[0] ? heightOf(rows[0], 'regular') : 0
  need(sheet, headerHeight + firstRow)
  drawRow(titles, 'TH', headerHeight)
  for (const cells of rows) {
    const height = heightOf(cells, 'regular')
    if (doc.y + height > sheet.bottom) {
      doc.addPage()
      drawRow(titles, 'TH', headerHeight)
    }
    drawRow(cells, 'TD', height)
  }
  element.end()
  gap(sheet, 6)
}
