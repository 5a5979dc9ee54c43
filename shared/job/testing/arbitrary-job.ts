// Random whole jobs for property tests, each one that parseJob accepts: slots fit the layout, ids are unique.
import * as fc from 'fast-check'
import { cylindersOf } from '../../engine/relations.ts'
import { slotsOf } from '../../engine/slots.ts'
import type { Layout } from '../../engine/layout-schema.ts'
import { shotsOf } from '../current.ts'
import type { Job } from '../job-schema.ts'
import { currentSchemaVersion } from '../schema-version.ts'
import type { Slot, Tray } from '../tray-schema.ts'
import { arbitraryLayout } from './arbitrary-layout.ts'
import {
  arbitraryCircumstances,
  arbitraryEngine,
  arbitraryId,
  arbitraryName,
  arbitraryPull,
  arbitraryReading,
  arbitraryRepair,
  arbitrarySha256,
  arbitraryShot,
  arbitraryText,
  arbitraryTime,
} from './arbitrary-parts.ts'

const arbitrarySlots = (layout: Layout): fc.Arbitrary<Slot[]> =>
  fc.tuple(
    ...slotsOf(layout).map(address =>
      fc
        .record(
          { shots: fc.array(arbitraryShot, { maxLength: 2 }), reading: arbitraryReading },
          { requiredKeys: ['shots'] },
        )
        .map(content => ({ ...address, ...content })),
    ),
  )

const arbitraryTray = (layout: Layout): fc.Arbitrary<Tray> =>
  fc.record({
    id: arbitraryId,
    name: arbitraryName,
    stage: fc.constantFrom('as found' as const, 'after repair' as const),
    createdAt: arbitraryTime,
    slots: arbitrarySlots(layout),
    unsorted: fc.array(arbitraryShot, { maxLength: 4 }),
  })

/** Numbers every tray, shot and pull in the order of the document, so that no id comes twice. */
const withUniqueIds = (job: Job): Job => {
  let shots = 0
  const renamed = <T extends { id: string }>(shot: T): T => ({ ...shot, id: `shot-${++shots}` })
  const trays = job.trays.map((tray, t) => ({
    ...tray,
    id: `tray-${t + 1}`,
    slots: tray.slots.map(slot => ({ ...slot, shots: slot.shots.map(renamed) })),
    unsorted: tray.unsorted.map(renamed),
  }))
  return { ...job, trays, pulls: job.pulls.map((pull, p) => ({ ...pull, id: `pull-${p + 1}` })) }
}

const requiredKeys = [
  'schemaVersion',
  'id',
  'createdAt',
  'updatedAt',
  'complaint',
  'engine',
  'layout',
  'circumstances',
  'trays',
  'pulls',
  'writeUp',
] as const

const jobOn = (layout: Layout): fc.Arbitrary<Job> =>
  fc
    .record(
      {
        schemaVersion: fc.constant(currentSchemaVersion),
        id: arbitraryId,
        rev: fc.nat({ max: 5000 }),
        hash: arbitrarySha256,
        createdAt: arbitraryTime,
        updatedAt: arbitraryTime,
        demo: fc.boolean(),
        archivedAt: arbitraryTime,
        technician: arbitraryName,
        complaint: arbitraryText,
        engine: arbitraryEngine,
        layout: fc.constant(layout),
        circumstances: arbitraryCircumstances,
        trays: fc.array(arbitraryTray(layout), { minLength: 1, maxLength: 2 }),
        pulls: fc.array(arbitraryPull(cylindersOf(layout)), { maxLength: 8 }),
        notes: arbitraryText.filter(text => text !== ''),
        repair: arbitraryRepair,
        writeUp: fc.record(
          { shots: fc.constant<string[]>([]), noteForShop: arbitraryText, noteForCustomer: arbitraryText },
          { requiredKeys: ['shots'] },
        ),
      },
      { requiredKeys: [...requiredKeys] },
    )
    .map(withUniqueIds)

/** Some of the job's own shots, chosen for the write-up. */
const withChosenShots = (job: Job): fc.Arbitrary<Job> =>
  fc
    .subarray(
      shotsOf(job).map(shot => shot.id),
      { maxLength: Math.min(4, shotsOf(job).length) },
    )
    .map(shots => ({ ...job, writeUp: { ...job.writeUp, shots } }))

/** Jobs of one layout. */
export const arbitraryJobOn = (layout: Layout): fc.Arbitrary<Job> => jobOn(layout).chain(withChosenShots)

export const arbitraryJob: fc.Arbitrary<Job> = arbitraryLayout.chain(arbitraryJobOn)
