// `plugtray import`: a folder of photos becomes a new job, its slots filled in cylinder or firing order.
import { randomUUID } from 'node:crypto'
import { resolve } from 'node:path'
import type { FileOutcome } from '../../shared/contract/task-schema.ts'
import { layoutById } from '../../shared/engine/layouts.ts'
import { cylindersOf } from '../../shared/engine/relations.ts'
import { applyCommand } from '../../shared/job/apply-command.ts'
import { type FillPlan, fillOrders, planFill, slotOrder } from '../../shared/job/fill-plan.ts'
import type { Job } from '../../shared/job/job-schema.ts'
import { newJob } from '../../shared/job/new-job.ts'
import type { Shot } from '../../shared/job/tray-schema.ts'
import { appVersion } from '../places-on-disk.ts'
import { accept, FaultError } from '../services/fault.ts'
import { takeIn } from '../services/intake/intake.ts'
import { listFolder } from '../services/intake/list-folder.ts'
import { openCatalogue } from '../services/store/catalogue.ts'
import { catalogueFolder } from './catalogue-folder.ts'
import { choice, type CliCommand, flag, printable, text, UsageError, wholeNumber } from './command-line.ts'
import { progressLine } from './progress.ts'

type ImportReport = {
  job: string
  filled: { cylinder: number; plug?: 'A' | 'B' | undefined; photo: string; file: string }[]
  leftOver: string[]
  duplicates: { file: string; of: string }[]
  refused: { file: string; why: string }[]
}

export const importCommand: CliCommand = {
  name: 'import',
  summary: 'Take a folder of plug photos in as a new job and lay them out.',
  usage:
    'plugtray import DIR --layout ID --order cylinder|firing [--start N] [--per-slot N | --gap SECONDS] [--catalogue DIR] [--json]',
  examples: [
    'plugtray import ./photos --layout i6-153624 --order cylinder',
    'plugtray import ./photos --layout v8-cross-oddeven --order firing --start 1 --gap 30 --json',
  ],
  optionHelp: [
    ['--layout ID', 'the engine, e.g. i4-1342; "i4" alone takes the first firing order listed for it'],
    ['--order ORDER', 'cylinder or firing: the order the plugs were photographed in'],
    ['--start N', 'the cylinder photographed first; default the first of that order'],
    ['--per-slot N', 'photos of each plug; default 1'],
    ['--gap SECONDS', 'or: the next plug begins after a pause of this length'],
    ['--vehicle TEXT', 'the vehicle in words'],
    ['--complaint TEXT', 'what the customer says'],
    ['--catalogue DIR', 'the catalogue folder (else PLUGTRAY_CATALOGUE, else your data folder)'],
    ['--json', 'print one JSON document on stdout and nothing else'],
  ],
  options: {
    layout: { type: 'string' },
    order: { type: 'string' },
    start: { type: 'string' },
    'per-slot': { type: 'string' },
    gap: { type: 'string' },
    vehicle: { type: 'string' },
    complaint: { type: 'string' },
    catalogue: { type: 'string' },
  },
  async run({ values, positionals, terminal }) {
    const [folder, ...more] = positionals
    if (!folder || more.length > 0) throw new UsageError('Name one folder of photos.')
    const id = text(values, 'layout')
    if (!id) throw new UsageError('Name the engine: --layout ID.')
    const order = choice(values, 'order', fillOrders)
    if (!order)
      throw new UsageError('Say in which order the plugs were photographed: --order cylinder or firing.')
    const perSlot = wholeNumber(values, 'per-slot', 1, 50)
    const gap = wholeNumber(values, 'gap', 1, 86_400)
    if (perSlot !== undefined && gap !== undefined)
      throw new UsageError('--per-slot and --gap exclude each other.')

    const catalogue = await openCatalogue(catalogueFolder(text(values, 'catalogue'), terminal.env), {
      appVersion,
    })
    const progress = progressLine(terminal)
    try {
      if (catalogue.readOnly !== null)
        throw new FaultError('READ_ONLY', {
          what: 'The catalogue can only be read now.',
          where: '',
          hint: catalogue.readOnly,
        })
      const layout = layoutById(id) ?? catalogue.layouts.get().find(one => one.id === id)
      if (!layout)
        throw new UsageError(`There is no layout "${id}". Examples: i4-1342, v6-oddeven, v8-cross-oddeven.`)
      const start = wholeNumber(values, 'start', 1, 16)
      if (start !== undefined && !cylindersOf(layout).includes(start))
        throw new UsageError(`--start: ${layout.name} has no cylinder ${start}.`)

      const now = new Date().toISOString()
      const trayId = randomUUID()
      let job = newJob({
        id: randomUUID(),
        trayId,
        now,
        complaint: text(values, 'complaint') ?? '',
        engine: { vehicle: text(values, 'vehicle') ?? '' },
        layout,
      })
      const { files } = await listFolder(resolve(folder), terminal.signal)
      const { shots, outcomes } = await takeIn(
        { files, job, photos: catalogue.photos, newId: randomUUID, now: () => now },
        { signal: terminal.signal, onProgress: ({ done, total, what }) => progress.step(done, total, what) },
      )
      progress.end()
      const plan = planFill({
        shots,
        slots: slotOrder(layout, order, start),
        ...(gap === undefined ? { perSlot: perSlot ?? 1 } : { gapSeconds: gap }),
      })
      if (shots.length > 0) {
        job = accept(applyCommand(job, { command: 'add shots', trayId, shots }, { now }))
        if (plan.assignments.length > 0)
          job = accept(
            applyCommand(job, { command: 'fill slots', trayId, assignments: plan.assignments }, { now }),
          )
        job = await catalogue.save(job)
      }
      const report = reportOf(job, plan, shots, outcomes)
      if (flag(values, 'json')) terminal.out(`${JSON.stringify(report, null, 2)}\n`)
      else terminal.out(asText(report))
      if (shots.length > 0) return 0
      terminal.err('plugtray import: nothing went in, so no job was made.\n')
      return 1
    } finally {
      progress.end()
      await catalogue.photos.close()
      await catalogue.close()
    }
  },
}

function reportOf(
  job: Job,
  plan: FillPlan,
  shots: readonly Shot[],
  outcomes: readonly FileOutcome[],
): ImportReport {
  const byId = new Map(shots.map(shot => [shot.id, shot]))
  return {
    job: shots.length > 0 ? job.id : '',
    filled: plan.assignments.flatMap(({ shot: id, to }) => {
      const shot = byId.get(id)
      return shot ? [{ ...to, photo: shot.photo, file: shot.fileName }] : []
    }),
    leftOver: plan.leftOver.map(shot => shot.fileName),
    duplicates: outcomes.flatMap(one =>
      one.outcome === 'duplicate' ? [{ file: one.file, of: one.of }] : [],
    ),
    refused: outcomes.flatMap(one => (one.outcome === 'refused' ? [{ file: one.file, why: one.why }] : [])),
  }
}

function asText(report: ImportReport): string {
  const lines = [
    ...report.filled.map(one => `${one.cylinder}${one.plug ?? ''}  ${one.file}`),
    ...report.leftOver.map(file => `left over: ${file}`),
    ...report.duplicates.map(one => `duplicate: ${one.file} has the same bytes as ${one.of}`),
    ...report.refused.map(one => `refused: ${one.file}: ${one.why}`),
    ...(report.job ? [`Job ${report.job}. Next: plugtray write-up ${report.job} --out report.pdf`] : []),
  ]
  return `${lines.map(printable).join('\n')}\n`
}
