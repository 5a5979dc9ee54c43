// The shop's own layouts: saved and removed one after another, so that two windows do not undo each other's.
import type { Layout } from '../../shared/engine/layout-schema.ts'
import { checkLayout } from '../../shared/engine/check-layout.ts'
import { builtInLayouts, withPlugsPerCylinder } from '../../shared/engine/layouts.ts'
import { FaultError } from './fault.ts'
import type { SmallDocument } from './store/small-documents.ts'
import { turns } from './store/turns.ts'

export type OwnLayouts = {
  list: () => Layout[]
  /** Adds it, or puts it in the place of the one with its id. Throws REFUSED where its cylinders do not add up. */
  save: (layout: Layout) => Promise<Layout[]>
  /** Throws NOT_FOUND. */
  remove: (id: string) => Promise<Layout[]>
}

/** A layout whose numbering and firing order fit together. Throws REFUSED with the first thing that does not. */
export function requireSoundLayout(layout: Layout): void {
  const [problem] = checkLayout(layout)
  if (!problem) return
  throw new FaultError('REFUSED', {
    what: problem.message,
    where: problem.field,
    hint: 'Correct the layout; nothing was saved.',
  })
}

const builtInIds = new Set(builtInLayouts.flatMap(layout => [layout.id, withPlugsPerCylinder(layout, 2).id]))

export function createOwnLayouts(document: SmallDocument<Layout[]>, changed: () => void): OwnLayouts {
  const inTurn = turns()
  const put = async (layouts: Layout[]) => {
    const saved = await document.set(layouts)
    changed()
    return saved
  }
  return {
    list: () => document.get(),
    save: layout =>
      inTurn('layouts', async () => {
        requireSoundLayout(layout)
        if (builtInIds.has(layout.id))
          throw new FaultError('REFUSED', {
            what: 'A layout that comes with the app has this id.',
            where: layout.id,
            hint: 'Save it under another id; the built-in one stays as it is.',
          })
        const others = document.get().filter(one => one.id !== layout.id)
        return put([...others, { ...layout, own: true }])
      }),
    remove: id =>
      inTurn('layouts', async () => {
        const known = document.get()
        if (!known.some(one => one.id === id))
          throw new FaultError('NOT_FOUND', {
            what: 'There is no such layout of your own.',
            where: `layout ${id}`,
            hint: 'It may have been removed already.',
          })
        return put(known.filter(one => one.id !== id))
      }),
  }
}
