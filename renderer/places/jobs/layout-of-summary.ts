// The layout behind a line of the job list, to draw it small. The index keeps its name only.
import { builtInLayouts, withPlugsPerCylinder } from '../../../shared/engine/layouts.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { cylindersOf } from '../../../shared/engine/relations.ts'
import type { JobSummary } from '../../../shared/contract/summary-schema.ts'

const builtIn = new Map(
  builtInLayouts
    .flatMap(layout => [layout, withPlugsPerCylinder(layout, 2)])
    .map(layout => [layout.name, layout]),
)

/** Undefined when no layout of that name has just these cylinders (any more). */
export function layoutOfSummary(job: JobSummary, own: readonly Layout[]): Layout | undefined {
  const layout = own.find(one => one.name === job.layoutName) ?? builtIn.get(job.layoutName)
  if (!layout) return undefined
  const cylinders = new Set(cylindersOf(layout))
  return cylinders.size === job.states.length && job.states.every(one => cylinders.has(one.cylinder))
    ? layout
    : undefined
}
