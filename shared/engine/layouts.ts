// The built-in layouts, ready to use, and how to find one by id.
import type { Layout } from './layout-schema.ts'
import type { EngineRow } from './engine-row.ts'
import { engineRows } from './layouts-data.ts'

/** 1-3-4-2 is "1342" in an id; from ten cylinders on the dashes stay. */
const orderInId = (order: readonly number[]): string => order.join(order.length < 10 ? '' : '-')

const layoutsOf = ({ orders, ...engine }: EngineRow): Layout[] =>
  orders.map(({ order, source }) => ({
    id: order.length === 1 ? engine.id : `${engine.id}-${orderInId(order)}`,
    name: order.length === 1 ? engine.name : `${engine.name}, ${order.join('-')}`,
    arrangement: engine.arrangement,
    banks: engine.banks.map(([name, cylinders]) => ({ name, cylinders })),
    firingOrder: order,
    intervalsDeg: engine.intervalsDeg ?? order.map(() => 720 / order.length),
    plugsPerCylinder: 1,
    front: 'top',
    ...(engine.note === undefined ? {} : { note: engine.note }),
    source,
  }))

/** One layout for each numbering and firing order, with one plug a cylinder. */
export const builtInLayouts: readonly Layout[] = engineRows.flatMap(layoutsOf)

const twin = '-twin'

/** The same engine with one or two plugs in each cylinder; the id tells the two apart. */
export function withPlugsPerCylinder(layout: Layout, plugsPerCylinder: 1 | 2): Layout {
  if (layout.plugsPerCylinder === plugsPerCylinder) return layout
  const single = layout.id.endsWith(twin) ? layout.id.slice(0, -twin.length) : layout.id
  const name = layout.name.replace(/, two plugs a cylinder$/, '')
  return plugsPerCylinder === 2
    ? { ...layout, plugsPerCylinder, id: single + twin, name: `${name}, two plugs a cylinder` }
    : { ...layout, plugsPerCylinder, id: single, name }
}

/**
 * Finds a built-in layout by its id. An id without the firing order ("i6", "v8-cross-oddeven") gives the first order
 * listed for that engine; "-twin" at the end asks for two plugs a cylinder.
 */
export function layoutById(id: string): Layout | undefined {
  const single = id.endsWith(twin) ? id.slice(0, -twin.length) : id
  const found =
    builtInLayouts.find(layout => layout.id === single) ??
    builtInLayouts.find(layout => layout.id.startsWith(`${single}-`))
  return found && withPlugsPerCylinder(found, id.endsWith(twin) ? 2 : 1)
}
