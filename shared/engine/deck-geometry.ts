// Where everything lies on the deck, the top view of the engine: bores, bank outlines, front mark, firing path.
import type { SlotAddress } from '../job/command-schema.ts'
import type { Layout } from './layout-schema.ts'
import { plugsOf } from './slots.ts'

export type Bore = SlotAddress & { x: number; y: number; r: number }
export type DeckGeometry = {
  width: number
  height: number
  /** One circle a plug; with two plugs they are smaller and stand side by side in their cylinder, A first. */
  bores: Bore[]
  /** Outline of each cylinder, its ends round: a circle around one plug, a long hole around two. */
  cylinders: { cylinder: number; x: number; y: number; width: number; height: number }[]
  banks: { name: string; x: number; y: number; width: number; height: number }[]
  front: { x: number; y: number; side: Layout['front'] }
  /** Middles of the cylinders in firing order. */
  firingPath: { x: number; y: number; cylinder: number }[]
}

// Units of the drawing: a cylinder is 80 across. Only proportions matter.
const cylinderSize = 80
/** Two plugs in one cylinder, with room for a word under each. */
const twin = { radius: 32, apart: 76, width: 152 }
const pitch = 100
const edge = 16
const frontRoom = 34
/** Rows of a flat engine lie further apart than those of a vee. */
const valley = { inline: 0, vee: 46, flat: 90 } as const
/** On a vee the first bank stands slightly forward, as crankpins shared by two rods make it. */
const stagger = { inline: 0, vee: 14, flat: 14 } as const

type Placed = { cylinder: number; x: number; y: number }

/** Top view of an engine, its front at the top unless the layout says otherwise. Abstract units. */
export function deckGeometry(layout: Layout): DeckGeometry {
  const cylinderWidth = layout.plugsPerCylinder === 2 ? twin.width : cylinderSize
  const bankWidth = cylinderWidth + 2 * edge
  const longest = Math.max(...layout.banks.map(bank => bank.cylinders.length))
  const bankHeight = (count: number) => (count - 1) * pitch + cylinderSize + 2 * edge
  const left = (bank: number) => edge + bank * (bankWidth + valley[layout.arrangement])
  const top = (bank: number) => frontRoom + bank * stagger[layout.arrangement]

  const banks = layout.banks.map((bank, i) => ({
    name: bank.name,
    x: left(i),
    y: top(i),
    width: bankWidth,
    height: bankHeight(bank.cylinders.length),
  }))
  const middles: Placed[] = layout.banks.flatMap((bank, i) =>
    bank.cylinders.map((cylinder, row) => ({
      cylinder,
      x: left(i) + bankWidth / 2,
      y: top(i) + edge + cylinderSize / 2 + row * pitch,
    })),
  )
  const width = left(layout.banks.length - 1) + bankWidth + edge
  const height = top(layout.banks.length - 1) + bankHeight(longest) + edge
  const cylinders = middles.map(({ cylinder, x, y }) => ({
    cylinder,
    x: x - cylinderWidth / 2,
    y: y - cylinderSize / 2,
    width: cylinderWidth,
    height: cylinderSize,
  }))
  const bores = middles.flatMap(({ cylinder, x, y }) => {
    const plugs = plugsOf(layout, cylinder)
    return plugs.map((address, i) => ({
      ...address,
      x: x + (i - (plugs.length - 1) / 2) * twin.apart,
      y,
      r: plugs.length === 2 ? twin.radius : cylinderSize / 2,
    }))
  })
  const firingPath = layout.firingOrder.flatMap(cylinder =>
    middles.filter(middle => middle.cylinder === cylinder),
  )
  const front = { x: width / 2, y: frontRoom / 2, side: 'top' as const }
  return turned({ width, height, bores, cylinders, banks, front, firingPath }, layout.front)
}

type Box = { x: number; y: number; width?: number; height?: number }

/** Turns the drawing so that the front points to the asked side; front right keeps the first bank at the top. */
function turned(deck: DeckGeometry, side: Layout['front']): DeckGeometry {
  if (side === 'top') return deck
  const { width, height } = deck
  const move = <T extends Box>(thing: T): T => {
    const w = thing.width ?? 0
    const h = thing.height ?? 0
    const size = thing.width === undefined ? {} : side === 'bottom' ? {} : { width: h, height: w }
    if (side === 'bottom') return { ...thing, x: width - thing.x - w, y: height - thing.y - h }
    if (side === 'left') return { ...thing, x: thing.y, y: width - thing.x - w, ...size }
    return { ...thing, x: height - thing.y - h, y: thing.x, ...size }
  }
  const lying = side !== 'bottom'
  return {
    width: lying ? height : width,
    height: lying ? width : height,
    bores: deck.bores.map(move),
    cylinders: deck.cylinders.map(move),
    banks: deck.banks.map(move),
    front: { ...move(deck.front), side },
    firingPath: deck.firingPath.map(move),
  }
}
