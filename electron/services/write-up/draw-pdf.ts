// Draws the write-up: letterhead, deck, findings, tables, photos, cautions. Drawing calls only; no markup is built.
import type { WriteUp, WriteUpPhoto } from '../../../shared/writeup/write-up.ts'
import { deckDrawing } from './deck-drawing.ts'
import { figures } from './figures.ts'
import { bullets, closeSheet, gap, heading, ink, openSheet, paragraph, rule, type Sheet } from './sheet.ts'
import { table } from './table.ts'

export type PrintedPhoto = WriteUpPhoto & { jpeg: Uint8Array; width: number; height: number }

export type DrawPdf = {
  report: WriteUp
  photos: readonly PrintedPhoto[]
  missing: readonly WriteUpPhoto[]
  paper: 'Letter' | 'A4'
  at: Date
}

export async function drawPdf({ report, photos, missing, paper, at }: DrawPdf): Promise<Uint8Array> {
  const vehicle = report.facts.find(([label]) => label === 'Vehicle')?.[1] ?? ''
  const made = at.toISOString().slice(0, 10)
  const sheet = openSheet({
    title: report.title,
    footer: `${vehicle ? `${vehicle}  ·  ` : ''}printed ${made}`,
    paper,
    at,
  })
  heading(sheet, 1, report.title)
  if (report.invented)
    paragraph(sheet, 'Invented demonstration job with rendered pictures: no real vehicle, person or shop.', {
      face: 'oblique',
      color: ink.quiet,
    })
  facts(sheet, report.facts)
  rule(sheet)

  heading(sheet, 2, 'Complaint')
  paragraph(sheet, report.complaint)
  heading(sheet, 2, 'In short')
  for (const line of report.summary) paragraph(sheet, line, { size: 10.5 })
  for (const line of report.engine) paragraph(sheet, line)
  if (report.note) paragraph(sheet, report.note, { face: 'oblique' })
  gap(sheet, 4)
  deckDrawing(sheet, report.layout, report.states, 190)

  heading(sheet, 2, 'By cylinder')
  for (const finding of report.findings) {
    heading(sheet, 3, `Cylinder ${finding.cylinder}: ${finding.state}`, 24)
    bullets(sheet, finding.lines, { size: report.audience === 'shop' ? 8.5 : 9.5 })
  }
  for (const one of report.tables) {
    heading(sheet, 2, one.title, 60)
    table(sheet, columnsOf(one.columns), one.rows)
    for (const note of one.notes) paragraph(sheet, note, { size: 7.5, color: ink.quiet, after: 2 })
  }
  if (photos.length + missing.length > 0) {
    heading(sheet, 2, 'Photos', 160)
    figures(sheet, photos, report.audience === 'shop' ? 3 : 2)
    for (const photo of missing)
      paragraph(sheet, `Photo not available: ${photo.caption}`, { color: ink.quiet })
  }
  heading(sheet, 2, 'Work done')
  if (report.repair.length === 0) paragraph(sheet, 'No repair is recorded.')
  for (const line of report.repair) paragraph(sheet, line)
  if (report.proof.length > 0) {
    heading(sheet, 2, 'How it was checked')
    for (const line of report.proof) paragraph(sheet, line)
  }
  if (report.notTested.length > 0) {
    heading(sheet, 2, 'Not tested')
    paragraph(sheet, `${report.notTested.join(', ')}.`)
  }
  heading(sheet, 2, 'Cautions')
  bullets(sheet, report.cautions, { size: 8.5 })
  return closeSheet(sheet)
}

function facts(sheet: Sheet, rows: WriteUp['facts']): void {
  for (const [label, value] of rows) paragraph(sheet, `${label}: ${value}`, { size: 9, after: 0.5 })
  gap(sheet, 4)
}

/** Verdicts need room; numbers do not. */
const columnsOf = (titles: readonly string[]) =>
  titles.map(title => ({
    title,
    width:
      title === 'Verdict' ? 3.4 : title === 'Final' ? 1.7 : title === 'Needle' || title === 'State' ? 1.6 : 1,
  }))
