// The numbers a customer can follow: one row a cylinder, before beside after.
import type { UnitChoice } from '../contract/settings-schema.ts'
import { balanceValues } from '../gauges/balance-values.ts'
import { compressionValues } from '../gauges/compression-values.ts'
import { pressureWords, rpmWords } from '../gauges/shown.ts'
import type { Job } from '../job/job-schema.ts'
import { stagesOf } from '../job/stage.ts'
import type { Stage } from '../job/tray-schema.ts'
import { none } from './verdict-words.ts'
import type { WriteUpTable } from './write-up.ts'

type Of = (stage: Stage) => ReadonlyMap<number, string>

export function customerTables(job: Job, units: UnitChoice): WriteUpTable[] {
  const compression: Of = stage =>
    new Map(
      compressionValues(job, stage).flatMap(({ cylinder, dry }) =>
        dry === undefined ? [] : [[cylinder, pressureWords(dry, units)]],
      ),
    )
  const balance: Of = stage =>
    new Map(balanceValues(job, stage).map(({ cylinder, drop }) => [cylinder, rpmWords(drop)]))
  return [
    ...table(
      job,
      'Compression of each cylinder',
      compression,
      'How well each cylinder holds pressure. All should be nearly alike.',
    ),
    ...table(
      job,
      'Work done by each cylinder',
      balance,
      'How much the engine slows when the cylinder is switched off. All should be nearly alike; a cylinder that changes little does little work.',
    ),
  ]
}

const heads: Readonly<Record<Stage, string>> = { 'as found': 'As found', 'after repair': 'After repair' }

function table(job: Job, title: string, of: Of, note: string): WriteUpTable[] {
  const stages = stagesOf(job)
    .map(stage => ({ stage, values: of(stage) }))
    .filter(({ values }) => values.size > 0)
  const cylinders = [...new Set(stages.flatMap(({ values }) => [...values.keys()]))].toSorted((a, b) => a - b)
  if (cylinders.length === 0) return []
  return [
    {
      title,
      columns: ['Cylinder', ...stages.map(({ stage }) => heads[stage])],
      rows: cylinders.map(cylinder => [
        String(cylinder),
        ...stages.map(({ values }) => values.get(cylinder) ?? none),
      ]),
      notes: [note],
    },
  ]
}
