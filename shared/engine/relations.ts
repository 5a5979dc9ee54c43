// How the cylinders of an engine stand to each other: side by side, in firing order, half a cycle apart.
import type { Bank, Layout } from './layout-schema.ts'

/** Cylinder numbers bank by bank, front to rear. */
export const cylindersOf = (layout: Layout): number[] => layout.banks.flatMap(bank => bank.cylinders)

export const bankOf = (layout: Layout, cylinder: number): Bank | undefined =>
  layout.banks.find(bank => bank.cylinders.includes(cylinder))

/** The other cylinders of the same bank, front to rear. */
export const bankMates = (layout: Layout, cylinder: number): number[] =>
  bankOf(layout, cylinder)?.cylinders.filter(other => other !== cylinder) ?? []

/** Cylinders next to this one in its bank: they share a web of the head gasket. */
export function neighbours(layout: Layout, cylinder: number): number[] {
  const row = bankOf(layout, cylinder)?.cylinders ?? []
  const at = row.indexOf(cylinder)
  return at < 0 ? [] : [row[at - 1], row[at + 1]].filter(other => other !== undefined)
}

/** First or last of its bank. */
export function isEnd(layout: Layout, cylinder: number): boolean {
  const row = bankOf(layout, cylinder)?.cylinders ?? []
  return row[0] === cylinder || row.at(-1) === cylinder
}

/** Crank degrees after the first cylinder of the firing order fires; null for a cylinder the engine lacks. */
export function fireAngle(layout: Layout, cylinder: number): number | null {
  const at = layout.firingOrder.indexOf(cylinder)
  return at < 0 ? null : layout.intervalsDeg.slice(0, at).reduce((sum, interval) => sum + interval, 0)
}

const halfCycle = 360
/** Published intervals are rounded to a tenth of a degree at worst. */
const angleTolerance = 0.5

const halfCycleAway = (layout: Layout, cylinder: number): number[] => {
  const angle = fireAngle(layout, cylinder)
  if (angle === null) return []
  return layout.firingOrder.filter(other => {
    const apart = Math.abs((fireAngle(layout, other) ?? 0) - angle)
    return other !== cylinder && Math.abs(apart - halfCycle) <= angleTolerance
  })
}

/**
 * The cylinder at top dead centre together with this one, one on compression and one on exhaust (they share a coil
 * where spark is wasted); null where none fires half a cycle away, as in odd-fire engines and odd counts, or where
 * several cylinders fire at once and no pair stands out.
 */
export function companion(layout: Layout, cylinder: number): number | null {
  const [other, ...more] = halfCycleAway(layout, cylinder)
  if (other === undefined || more.length > 0) return null
  return halfCycleAway(layout, other).length === 1 ? other : null
}

const inFiringOrder = (layout: Layout, cylinder: number, step: 1 | -1): number | null => {
  const { firingOrder } = layout
  const at = firingOrder.indexOf(cylinder)
  if (at < 0 || firingOrder.length < 2) return null
  return firingOrder[(at + step + firingOrder.length) % firingOrder.length] ?? null
}

/** The cylinder that fires just before this one; null with a single cylinder. */
export const firingPredecessor = (layout: Layout, cylinder: number): number | null =>
  inFiringOrder(layout, cylinder, -1)

/** The cylinder that fires just after this one; null with a single cylinder. */
export const firingSuccessor = (layout: Layout, cylinder: number): number | null =>
  inFiringOrder(layout, cylinder, 1)
