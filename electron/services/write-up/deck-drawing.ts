// The deck in the report: the engine from above with each cylinder's state as ring, glyph and word, fit for a grey copy.
import { deckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import type { CylinderState } from '../../../shared/diagnosis/condition-map.ts'
import { stateShapes } from '../../../shared/diagnosis/state-shape.ts'
import { gap, ink, need, type Sheet } from './sheet.ts'

type State = CylinderState['state']

/** Same ramp and shapes as on screen, from open dashed outline to solid. */
const look: Record<State, { fill: string; text: string; dash: boolean }> = {
  unknown: { fill: '#ffffff', text: ink.quiet, dash: true },
  sound: { fill: '#f4f4f4', text: ink.text, dash: false },
  watch: { fill: '#bcbcbc', text: ink.text, dash: false },
  fault: { fill: '#3a3a3a', text: '#ffffff', dash: false },
}

/** Draws the deck across at most `maxHeight` points, with a spoken list of the states. */
export function deckDrawing(
  sheet: Sheet,
  layout: Layout,
  states: readonly CylinderState[],
  maxHeight: number,
): void {
  const { doc } = sheet
  const deck = deckGeometry(layout)
  const scale = Math.min((sheet.width * 0.6) / deck.width, maxHeight / deck.height)
  const height = deck.height * scale
  need(sheet, height + 4)
  const originX = sheet.left
  const originY = doc.y
  const at = (x: number, y: number) => [originX + x * scale, originY + y * scale] as const
  const stateOf = new Map<number, State>(states.map(one => [one.cylinder, one.state]))
  const alt = `The engine from above. ${states.map(one => `Cylinder ${one.cylinder}: ${one.state}.`).join(' ')}`

  const element = doc.struct('Figure', { alt })
  sheet.parent.add(element)
  element.add(() => {
    doc.lineWidth(0.8).strokeColor(ink.line)
    for (const bank of deck.banks) {
      const [x, y] = at(bank.x, bank.y)
      doc.roundedRect(x, y, bank.width * scale, bank.height * scale, 6).stroke()
    }
    const [frontX, frontY] = at(deck.front.x, deck.front.y)
    doc.font('regular').fontSize(7).fillColor(ink.quiet)
    doc.text('front', frontX - 20, frontY - 4, { width: 40, align: 'center', lineBreak: false })
    for (const bore of deck.bores) {
      const state = stateOf.get(bore.cylinder) ?? 'unknown'
      const { fill, text, dash } = look[state]
      const [x, y] = at(bore.x, bore.y)
      const radius = bore.r * scale
      doc.circle(x, y, radius).lineWidth(1)
      if (dash) doc.dash(3, { space: 2 })
      doc.fillAndStroke(fill, ink.text)
      doc.undash()
      const size = Math.max(6, Math.min(11, radius * 0.55))
      doc.font('bold').fontSize(size).fillColor(text)
      const number = `${bore.cylinder}${bore.plug ?? ''}`
      const glyph = size * 0.42
      // Number and glyph side by side, centred together.
      const left = x - (doc.widthOfString(number) + 2.6 * glyph) / 2
      doc.text(number, left, y - size * 0.95, { lineBreak: false })
      drawState(sheet, state, left + doc.widthOfString(number) + 1.6 * glyph, y - size * 0.38, glyph, text)
      doc.font('regular').fontSize(size * 0.72)
      doc.text(state, x - radius, y + size * 0.25, { width: 2 * radius, align: 'center', lineBreak: false })
    }
  })
  element.end()
  doc.x = sheet.left
  doc.y = originY + height
  gap(sheet, 8)
}

function drawState(sheet: Sheet, state: State, x: number, y: number, radius: number, colour: string): void {
  const { outline, solid } = stateShapes[state]
  const { doc } = sheet
  doc
    .save()
    .translate(x, y)
    .scale(radius / 10)
  if (outline) {
    doc.path(outline.path).lineWidth(outline.width)
    if (outline.dash) doc.dash(outline.dash[0], { space: outline.dash[1] })
    doc.stroke(colour)
  }
  if (solid) doc.path(solid).fill(colour, 'even-odd')
  doc.restore()
}
