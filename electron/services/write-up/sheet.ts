// A tagged PDF being written from top to bottom: pages, margins, the cursor, headings and paragraphs.
import PDFDocument from 'pdfkit'
import { type Face, faceBytes } from './fonts.ts'

export type SheetOptions = {
  title: string
  /** Printed at the foot of every page beside the page number. */
  footer: string
  paper: 'Letter' | 'A4'
  /** When the report was made; goes into the document information. */
  at: Date
}

export type Sheet = {
  doc: PDFKit.PDFDocument
  /** Structure element that new content joins; sections replace it while they are open. */
  parent: PDFKit.PDFStructureElement
  left: number
  right: number
  top: number
  bottom: number
  width: number
  footer: string
}

export const ink = { text: '#1a1a1a', quiet: '#555555', line: '#9a9a9a', fill: '#efefef' } as const

const margin = 48

export function openSheet(options: SheetOptions): Sheet {
  const doc = new PDFDocument({
    size: options.paper === 'A4' ? 'A4' : 'LETTER',
    margins: { top: margin, bottom: margin + 14, left: margin, right: margin },
    bufferPages: true,
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en',
    displayTitle: true,
    info: { Title: options.title, Creator: 'Plugtray', Producer: 'Plugtray', CreationDate: options.at },
  })
  for (const face of ['regular', 'bold', 'oblique'] as const satisfies readonly Face[])
    doc.registerFont(face, faceBytes(face))
  const parent = doc.struct('Document')
  doc.addStructure(parent)
  const { width, height } = doc.page
  return {
    doc,
    parent,
    left: margin,
    right: width - margin,
    top: margin,
    bottom: height - margin - 14,
    width: width - 2 * margin,
    footer: options.footer,
  }
}

/** Starts a new page when less than `height` points are left on this one. */
export function need(sheet: Sheet, height: number): void {
  if (sheet.doc.y + height > sheet.bottom) sheet.doc.addPage()
}

export function gap(sheet: Sheet, points: number): void {
  sheet.doc.y = Math.min(sheet.doc.y + points, sheet.bottom)
}

const headingSize = { 1: 18, 2: 13, 3: 10.5 } as const

/** `keepWith`: points that must fit under the heading, so that it never stands alone at the foot of a page. */
export function heading(sheet: Sheet, level: 1 | 2 | 3, words: string, keepWith = 40): void {
  const { doc } = sheet
  const above = level === 1 ? 0 : level === 2 ? 14 : 8
  doc.font('bold').fontSize(headingSize[level])
  need(sheet, above + doc.heightOfString(words, { width: sheet.width }) + keepWith)
  if (doc.y > sheet.top) gap(sheet, above)
  sheet.parent.add(
    doc.struct(`H${level}`, {}, () => {
      doc.font('bold').fontSize(headingSize[level]).fillColor(ink.text)
      doc.text(words, sheet.left, doc.y, { width: sheet.width })
    }),
  )
  gap(sheet, level === 1 ? 6 : 4)
}

export type TextStyle = { face?: Face; size?: number; color?: string; indent?: number; after?: number }

/** Text that may run over a page break. */
export function paragraph(sheet: Sheet, words: string, style: TextStyle = {}): void {
  const { doc } = sheet
  const indent = style.indent ?? 0
  doc.font(style.face ?? 'regular').fontSize(style.size ?? 9.5)
  need(sheet, Math.min(doc.heightOfString(words, { width: sheet.width - indent }), 30))
  sheet.parent.add(
    doc.struct('P', {}, () => {
      doc
        .font(style.face ?? 'regular')
        .fontSize(style.size ?? 9.5)
        .fillColor(style.color ?? ink.text)
      doc.text(words, sheet.left + indent, doc.y, { width: sheet.width - indent, lineGap: 1.5 })
    }),
  )
  gap(sheet, style.after ?? 4)
}

/** Bulleted list, one structure item a line. */
export function bullets(sheet: Sheet, items: readonly string[], style: TextStyle = {}): void {
  const { doc } = sheet
  const list = doc.struct('L')
  sheet.parent.add(list)
  const size = style.size ?? 9.5
  for (const item of items) {
    doc.font('regular').fontSize(size)
    need(sheet, doc.heightOfString(item, { width: sheet.width - 14 }))
    const entry = doc.struct('LI')
    list.add(entry)
    const y = doc.y
    const draw = () =>
      doc
        .font('regular')
        .fontSize(size)
        .fillColor(style.color ?? ink.text)
    entry.add(doc.struct('Lbl', {}, () => draw().text('•', sheet.left + 2, y, { lineBreak: false })))
    entry.add(
      doc.struct('LBody', {}, () =>
        draw().text(item, sheet.left + 14, y, { width: sheet.width - 14, lineGap: 1.5 }),
      ),
    )
    entry.end()
    gap(sheet, 2)
  }
  list.end()
  gap(sheet, style.after ?? 3)
}

/** A thin rule across the page; decoration, so not part of the reading order. */
export function rule(sheet: Sheet): void {
  const { doc } = sheet
  doc.markContent('Artifact', { type: 'Layout' })
  doc.moveTo(sheet.left, doc.y).lineTo(sheet.right, doc.y).lineWidth(0.5).strokeColor(ink.line).stroke()
  doc.endMarkedContent()
  gap(sheet, 6)
}

/** Numbers the pages and hands back the finished file. */
export async function closeSheet(sheet: Sheet): Promise<Uint8Array> {
  const { doc } = sheet
  sheet.parent.end()
  const { start, count } = doc.bufferedPageRange()
  for (let page = start; page < start + count; page += 1) {
    doc.switchToPage(page)
    // The footer stands below the text area: without lifting the margin pdfkit would start a new page for it.
    doc.page.margins.bottom = 0
    doc.markContent('Artifact', { type: 'Pagination' })
    doc.font('regular').fontSize(7.5).fillColor(ink.quiet)
    const y = sheet.bottom + 12
    doc.text(sheet.footer, sheet.left, y, {
      width: sheet.width - 90,
      height: 10,
      ellipsis: true,
      lineBreak: false,
    })
    doc.text(`Page ${page - start + 1} of ${count}`, sheet.right - 90, y, {
      width: 90,
      align: 'right',
      lineBreak: false,
    })
    doc.endMarkedContent()
  }
  const chunks: Uint8Array[] = []
  const finished = new Promise<void>((resolve, reject) => {
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    doc.on('end', () => resolve())
    doc.on('error', reject)
  })
  doc.end()
  await finished
  return Buffer.concat(chunks)
}
