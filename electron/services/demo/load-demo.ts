// Plays the demonstration jobs into a catalogue: photos through the ordinary intake, everything else through the
// ordinary commands, so that a demo job is a job like any other, marked as invented.
import { randomUUID } from 'node:crypto'
import { readdir, readFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { layoutById } from '../../../shared/engine/layouts.ts'
import { slotKey, slotsOf } from '../../../shared/engine/slots.ts'
import { applyCommand } from '../../../shared/job/apply-command.ts'
import type { Command, SlotAddress } from '../../../shared/job/command-schema.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import { newJob } from '../../../shared/job/new-job.ts'
import type { ShotKind } from '../../../shared/plug/condition.ts'
import { accept, FaultError } from '../fault.ts'
import { takeIn } from '../intake/intake.ts'
import type { Catalogue } from '../store/catalogue.ts'
import { type DemoScript, demoScriptSchema, pullFromScript } from './demo-script.ts'

type LoadDemo = {
  /** sample-images */
  folder: string
  catalogue: Catalogue
  signal?: AbortSignal
  onProgress?: (done: number, total: number, what: string) => void
  /** Each job as soon as it is ready; otherwise all at the end, so that a cancelled load leaves none. */
  oneByOne?: boolean
}

const shotKinds: Readonly<Record<string, ShotKind>> = {
  'end-on': 'end-on',
  side: 'side',
  whole: 'whole plug',
  well: 'plug well',
}

/** A demonstration job is known by its id, so that loading twice does not put it there twice. */
const idOf = (name: string): string => `demo-${name}`

/**
 * Ids of the jobs that were added: those that are not in the catalogue already. Throws NOT_FOUND when there are no scripts.
 */
export async function loadDemo(request: LoadDemo): Promise<string[]> {
  const { folder, catalogue, signal, onProgress, oneByOne = false } = request
  const names = (await readdir(join(folder, 'jobs')).catch(() => []))
    .filter(name => name.endsWith('.json'))
    .toSorted()
  if (names.length === 0)
    throw new FaultError('NOT_FOUND', {
      what: 'The demonstration jobs are not here.',
      where: 'sample-images/jobs',
      hint: 'Fetch the project again: they come with it.',
    })
  const scripts = await Promise.all(
    names.map(async name => ({
      name: basename(name, '.json'),
      script: demoScriptSchema.parse(JSON.parse(await readFile(join(folder, 'jobs', name), 'utf8'))),
    })),
  )
  const wanted = scripts.filter(({ name }) => !catalogue.has(idOf(name)))
  const ready: Job[] = []
  for (const [done, { name, script }] of wanted.entries()) {
    signal?.throwIfAborted()
    onProgress?.(done, wanted.length, script.engine.vehicle)
    const job = await build(idOf(name), script, join(folder, 'photos', name), catalogue, signal)
    ready.push(oneByOne ? await catalogue.save(job) : job)
  }
  signal?.throwIfAborted()
  if (!oneByOne) for (const job of ready) await catalogue.save(job)
  onProgress?.(wanted.length, wanted.length, '')
  return ready.map(({ id }) => id)
}

async function build(
  id: string,
  script: DemoScript,
  photoFolder: string,
  catalogue: Catalogue,
  signal?: AbortSignal,
): Promise<Job> {
  const layout = layoutById(script.layout)
  if (!layout) throw new Error(`demo layout ${script.layout} is unknown`)
  const context = { now: script.at }
  let job = newJob({
    id,
    trayId: randomUUID(),
    now: script.at,
    complaint: script.complaint,
    engine: script.engine,
    layout,
    demo: true,
  })
  const run = (command: Command) => {
    job = accept(applyCommand(job, command, context))
  }
  run({ command: 'set circumstances', circumstances: script.circumstances })
  run({ command: 'set notes', notes: script.notes })

  const files = await readdir(photoFolder).catch(() => [])
  for (const [at, tray] of script.trays.entries()) {
    let trayId = job.trays[0]?.id ?? ''
    if (at === 0) run({ command: 'rename tray', trayId, name: tray.name, stage: tray.stage })
    else {
      trayId = randomUUID()
      run({ command: 'add tray', trayId, name: tray.name, stage: tray.stage })
    }
    for (const { file, to, kind } of photosOfTray(files, tray.photos)) {
      const { shots } = await takeIn(
        {
          files: [{ path: join(photoFolder, file), name: file }],
          job,
          photos: catalogue.photos,
          newId: randomUUID,
          now: () => script.at,
          kind,
        },
        { signal },
      )
      if (shots.length > 0) run({ command: 'add shots', trayId, shots, to })
    }
    for (const slot of slotsOf(layout)) {
      const reading = tray.readings[slotKey(slot)]
      if (!reading) continue
      const { condition, details, note } = reading
      run({
        command: 'set reading',
        trayId,
        slots: [slot],
        change: { ...(condition ? { condition } : {}), details, ...(note === undefined ? {} : { note }) },
      })
    }
  }
  for (const pull of script.pulls)
    run({ command: 'add pull', pull: pullFromScript(pull, randomUUID(), script.at) })
  if (script.repair) run({ command: 'set repair', repair: script.repair })
  return job
}

function photosOfTray(
  files: readonly string[],
  tray: string,
): { file: string; to: SlotAddress; kind: ShotKind }[] {
  return files.toSorted().flatMap(file => {
    const parts = /^(.+)-(\d{2})-([a-z-]+)\.jpg$/.exec(file)
    const kind = shotKinds[parts?.[3] ?? '']
    if (!parts || parts[1] !== tray || !kind) return []
    return [{ file, to: { cylinder: Number(parts[2]) }, kind }]
  })
}
