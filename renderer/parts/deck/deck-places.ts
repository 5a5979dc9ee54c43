// Where the deck's drawing and its callouts go in a frame of so many pixels: the engine in the middle, each cylinder's
// callout at its outer side, as large as the frame allows.
import type { DeckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'

export type Box = { left: number; top: number; width: number; height: number }
export type Callout = Box & { cylinder: number; side: 'left' | 'right' | 'top' | 'bottom' }
export type DeckPlaces = {
  /** Frame pixels per drawing unit. */
  scale: number
  /** Frame position of the drawing's top left corner. */
  x: number
  y: number
  callouts: Callout[]
}

const calloutWidth = { least: 110, most: 168 }
/** A line with number, glyph and word, and a line of words under it. */
const calloutHeight = 44
const gap = 10
const largestScale = 1.5

type Size = { width: number; height: number }

/** The front at the top or the bottom: banks stand upright, callouts go to their left and right. */
const stands = (layout: Layout): boolean => layout.front === 'top' || layout.front === 'bottom'

/** Frame pixels in, frame pixels out. A frame of no size gives a drawing of no size. */
export function deckPlaces(layout: Layout, deck: DeckGeometry, frame: Size): DeckPlaces {
  const upright = stands(layout)
  const sidesUsed = deck.banks.length
  const least = upright ? calloutWidth.least : calloutHeight
  const room = upright
    ? { width: frame.width - sidesUsed * (least + gap), height: frame.height }
    : { width: frame.width, height: frame.height - sidesUsed * (least + gap) }
  const engine = drawnPart(layout, deck)
  const scale = Math.max(0, Math.min(room.width / engine.width, room.height / engine.height, largestScale))
  const drawn = { width: engine.width * scale, height: engine.height * scale }
  const left = upright ? Math.max(0, (frame.width - drawn.width) / sidesUsed - gap) : 0
  const width = upright ? Math.min(calloutWidth.most, left) : 0
  const whole = upright
    ? { width: drawn.width + sidesUsed * (width + gap), height: drawn.height }
    : { width: drawn.width, height: drawn.height + sidesUsed * (calloutHeight + gap) }
  const before = sidesUsed === 2 ? (upright ? width : calloutHeight) + gap : 0
  const x = (frame.width - whole.width) / 2 + (upright ? before : 0) - engine.x * scale
  const y = (frame.height - whole.height) / 2 + (upright ? 0 : before) - engine.y * scale

  const callouts = deck.banks.flatMap((bank, at) =>
    (layout.banks[at]?.cylinders ?? []).flatMap(cylinder => {
      const outline = deck.cylinders.find(one => one.cylinder === cylinder)
      if (!outline) return []
      const middle = {
        x: x + (outline.x + outline.width / 2) * scale,
        y: y + (outline.y + outline.height / 2) * scale,
      }
      return [{ cylinder, ...calloutAt(upright, isFirstSide(deck, at, upright), bank, middle) }]
    }),
  )

  function calloutAt(
    standing: boolean,
    firstSide: boolean,
    bank: DeckGeometry['banks'][number],
    middle: { x: number; y: number },
  ): Omit<Callout, 'cylinder'> {
    if (standing) {
      const top = middle.y - calloutHeight / 2
      return firstSide
        ? { side: 'left', left: x + bank.x * scale - gap - width, top, width, height: calloutHeight }
        : { side: 'right', left: x + (bank.x + bank.width) * scale + gap, top, width, height: calloutHeight }
    }
    const pitch = Math.min(calloutWidth.most, 96 * scale)
    return {
      side: firstSide ? 'top' : 'bottom',
      left: middle.x - pitch / 2,
      top: firstSide ? y + bank.y * scale - gap - calloutHeight : y + (bank.y + bank.height) * scale + gap,
      width: pitch,
      height: calloutHeight,
    }
  }

  return { scale, x, y, callouts }
}

/** The front of the engine is drawn this deep beside the banks. */
export const frontDepth = { plate: 20, gap: 8 }

/** The banks with the front plate and a hair's breadth around them, in drawing units. */
function drawnPart(layout: Layout, deck: DeckGeometry): { x: number; y: number } & Size {
  const margin = 2
  const front = frontDepth.plate + frontDepth.gap
  const at = (side: Layout['front']) => margin + (layout.front === side ? front : 0)
  const x = Math.min(...deck.banks.map(bank => bank.x)) - at('left')
  const y = Math.min(...deck.banks.map(bank => bank.y)) - at('top')
  const right = Math.max(...deck.banks.map(bank => bank.x + bank.width)) + at('right')
  const bottom = Math.max(...deck.banks.map(bank => bank.y + bank.height)) + at('bottom')
  return { x, y, width: right - x, height: bottom - y }
}

/** Whether a bank lies to the left of (above) the other one; a single bank has its callouts on the right (below). */
function isFirstSide(deck: DeckGeometry, at: number, upright: boolean): boolean {
  const [one, other] = [deck.banks[at], deck.banks[1 - at]]
  if (!one || !other || deck.banks.length < 2) return false
  return upright ? one.x < other.x : one.y < other.y
}
