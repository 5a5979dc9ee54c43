// What a sync channel says about the layout, in words; the same for every kind of recording.
import type { Layout } from '../engine/layout-schema.ts'
import type { Remark } from './recording.ts'
import type { SyncReading } from './sync-pulses.ts'

/** @param reading null where there is no sync channel */
export function syncRemarks(layout: Layout, reading: SyncReading | null): Remark[] {
  if (!reading) return []
  const count = layout.firingOrder.length
  if (reading.kind === 'cycle') {
    if (!reading.doubtful) return []
    return [
      {
        code: 'sync between',
        text: 'The sync pulse lies half way between two cylinders: which of them is cylinder 1 is doubtful. Take the sync from the ignition or the injector of cylinder 1.',
      },
    ]
  }
  if (reading.kind === 'turn') {
    return [
      {
        code: 'sync every turn',
        text: 'The sync pulse comes every turn, not every second one, so cylinder 1 cannot be told from the one half a cycle later. Take the sync from a camshaft sensor or from an injector.',
      },
    ]
  }
  if (reading.kind === 'other') {
    return [
      {
        code: 'count differs',
        text: `${reading.humpsBetween} compressions come between two sync pulses, but the layout has ${count} cylinders. Check the layout chosen for this engine; the values are only right if it is.`,
      },
    ]
  }
  return [
    {
      code: 'no sync',
      text: 'The sync channel has no regular pulses, so the cylinders could not be named. Check its connection, or compare by position.',
    },
  ]
}
