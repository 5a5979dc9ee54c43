// One small invented job for tests that need known values: four cylinders in line, five shots, one reading, one pull.
import type { Layout } from '../../engine/layout-schema.ts'
import { newJob } from '../new-job.ts'
import type { Job } from '../job-schema.ts'
import type { PullOf } from '../pull-schema.ts'
import type { Outcome } from '../refusal.ts'
import type { Reading, Shot } from '../tray-schema.ts'

export const fourInLine: Layout = {
  id: 'example-i4',
  name: 'Example four',
  arrangement: 'inline',
  banks: [{ name: 'Bank 1', cylinders: [1, 2, 3, 4] }],
  firingOrder: [1, 3, 4, 2],
  intervalsDeg: [180, 180, 180, 180],
  plugsPerCylinder: 1,
  front: 'top',
}
export const threeInLine: Layout = {
  ...fourInLine,
  id: 'example-i3',
  name: 'Example three',
  banks: [{ name: 'Bank 1', cylinders: [1, 2, 3] }],
  firingOrder: [1, 3, 2],
  intervalsDeg: [240, 240, 240],
}
export const twinPlugFour: Layout = {
  ...fourInLine,
  id: 'example-i4-twin',
  name: 'Example four, twin plug',
  plugsPerCylinder: 2,
}

export const now = '2026-03-02T10:00:00Z'
export const context = { now, person: 'Ana' }

/** `id` also gives the file name, the hash and, from its last digit, the second it was taken. */
export const shotNamed = (id: string, more: Partial<Shot> = {}): Shot => ({
  id,
  photo: id.replaceAll(/[^0-9a-f]/g, '').padStart(64, '0'),
  format: 'jpeg',
  fileName: `${id}.jpg`,
  bytes: 1000,
  width: 400,
  height: 300,
  addedAt: '2026-03-02T09:30:00Z',
  kind: 'end-on',
  takenAt: { local: `2026-03-02T09:00:0${id.at(-1) ?? '0'}` },
  ...more,
})

export const oilReading: Reading = {
  by: { kind: 'person', name: 'Ben' },
  at: '2026-03-02T09:45:00Z',
  condition: 'oil-wetted',
  details: { wetness: 'wet', deposits: [{ kind: 'wet oil', place: 'nose' }] },
  note: 'Drips when tilted',
}

export const compressionPull = (id: string, cylinder: number, psi = 148): PullOf<'compression'> => ({
  id,
  test: 'compression',
  stage: 'as found',
  at: '2026-03-02T09:50:00Z',
  by: 'Ben',
  cylinder,
  entry: { final: { value: psi, unit: 'psi' } },
})

/** s1 and s2 on cylinder 1, s3 on 2 with the oil reading, s4 and s5 unsorted; pull p1 of cylinder 3. */
export const exampleJob = (): Job => {
  const job = newJob({
    id: 'job-1',
    trayId: 't1',
    now: '2026-03-02T09:00:00Z',
    complaint: 'Shakes at idle',
    engine: { vehicle: 'Invented delivery van' },
    layout: fourInLine,
  })
  const [tray] = job.trays
  if (tray === undefined) throw new Error('A new job has a tray.')
  return {
    ...job,
    trays: [
      {
        ...tray,
        slots: [
          { cylinder: 1, shots: [shotNamed('s1'), shotNamed('s2')] },
          { cylinder: 2, shots: [shotNamed('s3')], reading: oilReading },
          { cylinder: 3, shots: [] },
          { cylinder: 4, shots: [] },
        ],
        unsorted: [shotNamed('s4'), shotNamed('s5')],
      },
    ],
    pulls: [compressionPull('p1', 3)],
    writeUp: { shots: ['s1', 's4'] },
  }
}

/** The value, or an error that shows the refusal. */
export const valueOf = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(`Refused: ${JSON.stringify(outcome.refusal)}`)
  return outcome.value
}

/** Shot ids by slot key, with "unsorted" last; empty slots left out. */
export const laidOut = (job: Job, trayId = 't1'): Record<string, string[]> => {
  const tray = job.trays.find(({ id }) => id === trayId)
  if (tray === undefined) return {}
  const slots = tray.slots.map(slot => [`${slot.cylinder}${slot.plug ?? ''}`, slot.shots] as const)
  return Object.fromEntries(
    [...slots, ['unsorted', tray.unsorted] as const]
      .filter(([, shots]) => shots.length > 0)
      .map(([key, shots]) => [key, shots.map(({ id }) => id)]),
  )
}
