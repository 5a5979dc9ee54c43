// Where the deck's drawing and its callouts go in a frame of so many pixels, as large as the frame allows: callouts at the
// outer side of each bank, or, where that would leave little room for a broad engine, under each cylinder.
import type { DeckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { spreadRows } from './spread-rows.ts'

export type Box = { left: number; top: number; width: number; height: number }
export type Callout = Box & { cylinder: number; side: 'left' | 'right' | 'top' | 'bottom' }
export type DeckPlaces = {
  /** The drawing, its cylinders further apart where callouts stand between them. */
  deck: DeckGeometry
  /** Frame pixels per drawing unit. */
  scale: number
  /** Frame position of the drawing's origin. */
  x: number
  y: number
  callouts: Callout[]
}

const calloutWidth = { least: 120, most: 168 }
/** A line with number, glyph and word, and a line of words under it. */
const calloutHeight = 44
const gap = 8
const largestScale = 1.5

type Size = { width: number; height: number }
type Area = { x: number; y: number } & Size

/** Frame pixels in, frame pixels out. A frame of no size gives a drawing of no size. */
export function deckPlaces(layout: Layout, deck: DeckGeometry, frame: Size): DeckPlaces {
  if (layout.front === 'left' || layout.front === 'right') return aboveAndBelow(layout, deck, frame)
  const beside = atTheSides(layout, deck, frame)
  const under = underEach(layout, deck, frame)
  const bank = Math.min(...deck.banks.map(one => one.width))
  return under.scale > 1.2 * beside.scale && bank * under.scale >= calloutWidth.least ? under : beside
}

const fit = (area: Area, width: number, height: number): number =>
  Math.max(0, Math.min(width / area.width, height / area.height, largestScale))

function atTheSides(layout: Layout, deck: DeckGeometry, frame: Size): DeckPlaces {
  const area = drawnPart(layout, deck)
  const sides = deck.banks.length
  const scale = fit(area, frame.width - sides * (calloutWidth.least + gap), frame.height)
  const room = (frame.width - area.width * scale) / sides - gap
  const width = Math.max(0, Math.min(calloutWidth.most, room))
  const whole = area.width * scale + sides * (width + gap)
  const x = (frame.width - whole) / 2 + (sides === 2 ? width + gap : 0) - area.x * scale
  const y = (frame.height - area.height * scale) / 2 - area.y * scale
  const callouts = forEachCylinder(layout, deck, ({ cylinder, bank, middle, first }) => ({
    cylinder,
    side: first ? ('left' as const) : ('right' as const),
    left: x + (first ? bank.x * scale - gap - width : (bank.x + bank.width) * scale + gap),
    top: y + middle.y * scale - calloutHeight / 2,
    width,
    height: calloutHeight,
  }))
  return { deck, scale, x, y, callouts }
}

function underEach(layout: Layout, deck: DeckGeometry, frame: Size): DeckPlaces {
  const flat = drawnPart(layout, deck)
  const rows = Math.max(...layout.banks.map(bank => bank.cylinders.length))
  const scale = fit(flat, frame.width, frame.height - rows * calloutHeight)
  const spread = spreadRows(layout, deck, scale > 0 ? calloutHeight / scale : 0)
  const area = drawnPart(layout, spread)
  const x = (frame.width - area.width * scale) / 2 - area.x * scale
  const y = (frame.height - area.height * scale) / 2 - area.y * scale
  const callouts = forEachCylinder(layout, spread, ({ cylinder, bank, outline }) => ({
    cylinder,
    side: 'bottom' as const,
    left: x + bank.x * scale + 2,
    top: y + (outline.y + outline.height) * scale,
    width: bank.width * scale - 4,
    height: calloutHeight,
  }))
  return { deck: spread, scale, x, y, callouts }
}

function aboveAndBelow(layout: Layout, deck: DeckGeometry, frame: Size): DeckPlaces {
  const area = drawnPart(layout, deck)
  const sides = deck.banks.length
  const scale = fit(area, frame.width, frame.height - sides * (calloutHeight + gap))
  const whole = area.height * scale + sides * (calloutHeight + gap)
  const x = (frame.width - area.width * scale) / 2 - area.x * scale
  const y = (frame.height - whole) / 2 + (sides === 2 ? calloutHeight + gap : 0) - area.y * scale
  const callouts = forEachCylinder(layout, deck, ({ cylinder, bank, middle, first, outline }) => {
    const width = (outline.width + 18) * scale
    return {
      cylinder,
      side: first ? ('top' as const) : ('bottom' as const),
      left: x + middle.x * scale - width / 2,
      top: y + (first ? bank.y * scale - gap - calloutHeight : (bank.y + bank.height) * scale + gap),
      width,
      height: calloutHeight,
    }
  })
  return { deck, scale, x, y, callouts }
}

type Placed = {
  cylinder: number
  bank: DeckGeometry['banks'][number]
  outline: DeckGeometry['cylinders'][number]
  middle: { x: number; y: number }
  /** In the left (upper) one of two banks. */
  first: boolean
}

function forEachCylinder(layout: Layout, deck: DeckGeometry, place: (at: Placed) => Callout): Callout[] {
  return deck.banks.flatMap((bank, at) =>
    (layout.banks[at]?.cylinders ?? []).flatMap(cylinder => {
      const outline = deck.cylinders.find(one => one.cylinder === cylinder)
      if (!outline) return []
      const middle = { x: outline.x + outline.width / 2, y: outline.y + outline.height / 2 }
      const other = deck.banks[1 - at]
      const lying = layout.front === 'left' || layout.front === 'right'
      const first = deck.banks.length === 2 && !!other && (lying ? bank.y < other.y : bank.x < other.x)
      return [place({ cylinder, bank, outline, middle, first })]
    }),
  )
}

/** The front of the engine is drawn this deep beside the banks. */
export const frontDepth = { plate: 20, gap: 8 }

/** The banks with the front plate and a hair's breadth around them, in drawing units. */
function drawnPart(layout: Layout, deck: DeckGeometry): Area {
  const margin = 2
  const front = frontDepth.plate + frontDepth.gap
  const at = (side: Layout['front']) => margin + (layout.front === side ? front : 0)
  const x = Math.min(...deck.banks.map(bank => bank.x)) - at('left')
  const y = Math.min(...deck.banks.map(bank => bank.y)) - at('top')
  const right = Math.max(...deck.banks.map(bank => bank.x + bank.width)) + at('right')
  const bottom = Math.max(...deck.banks.map(bank => bank.y + bank.height)) + at('bottom')
  return { x, y, width: right - x, height: bottom - y }
}
