// One suite over the typed client, run against each host: the same cases, the same answers, the same error codes.
import { createHash } from 'node:crypto'
import { existsSync } from 'node:fs'
import { mkdtemp, readdir, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { ORPCError } from '@orpc/client'
import sharp from 'sharp'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { appVersion } from '../../electron/places-on-disk.ts'
import { openCatalogue } from '../../electron/services/store/catalogue.ts'
import { contract, type Change, type JobState } from '../../shared/contract/contract.ts'
import { photoPath } from '../../shared/contract/routes.ts'
import { defaultSettings } from '../../shared/contract/settings-schema.ts'
import type { TaskEvent } from '../../shared/contract/task-schema.ts'
import { layoutById } from '../../shared/engine/layouts.ts'
import type { Command } from '../../shared/job/command-schema.ts'
import { asCsv } from '../../shared/recordings/testing/as-csv.ts'
import { starterRecording } from '../../shared/recordings/testing/starter-recording.ts'
import { jpegBytes } from '../fixtures/images/pictures.ts'
import { operationsOf, recordCalls } from './every-operation.ts'
import { type Api, type HostUnderTest, hosts } from './hosts.ts'

vi.mock('electron', () => import('../doubles/electron.ts'))

const layout = layoutById('i4-1342')
if (!layout) throw new Error('no layout')
const wanted = { complaint: 'Runs rough when warm', engine: { vehicle: 'Invented wagon' }, layout }
const pull = (id: string, cylinder: number, psi: number): Command => ({
  command: 'add pull',
  pull: {
    id,
    test: 'compression',
    stage: 'as found',
    at: '2026-03-02T09:14:00Z',
    cylinder,
    entry: { final: { value: psi, unit: 'psi' } },
  },
})

describe.each(hosts)('%s', (_, open) => {
  let folder: string
  let host: HostUnderTest
  let api: Api
  const called = new Set<string>()

  beforeEach(async () => {
    folder = join(await mkdtemp(join(tmpdir(), 'plugtray-contract-')), 'catalogue')
    // Not new any more: a new one would be filled with the demonstration jobs meanwhile.
    await (await openCatalogue(folder, { appVersion })).close()
    host = await open(folder)
    api = recordCalls(host.api, called)
  })
  afterEach(async () => {
    await host.close()
    await rm(join(folder, '..'), { recursive: true, force: true })
  })
  const faultOf = async (work: Promise<unknown>) => {
    const error: unknown = await work.then(
      () => 'no failure',
      (failure: unknown) => failure,
    )
    if (!(error instanceof ORPCError)) throw new Error(`not a typed failure: ${String(error)}`)
    return { code: error.code, defined: error.defined, data: error.data }
  }
  const eventsOf = async (taskId: string): Promise<TaskEvent[]> => {
    const events: TaskEvent[] = []
    for await (const event of await api.tasks.watch({ taskId })) events.push(event)
    return events
  }
  const trayOf = ({ job }: JobState): string => job.trays[0]?.id ?? ''

  it('tells the state of the catalogue', async () => {
    expect(await api.catalogue.status()).toEqual({
      appVersion,
      host: expect.stringMatching(/^(memory|desktop|browser)$/),
      folder,
      readOnly: null,
    })
  })

  it('keeps a job with what was done to it', async () => {
    const { job, undo } = await api.jobs.create(wanted)
    expect(undo).toBeNull()
    await api.jobs.apply({ id: job.id, command: pull('p1', 2, 148) })
    const state = await api.jobs.apply({
      id: job.id,
      command: { command: 'set complaint', complaint: 'Misses at idle' },
    })
    expect(state.job.rev).toBe(3)
    expect(state.job.pulls.map(({ id }) => id)).toEqual(['p1'])
    expect(await api.jobs.get({ id: job.id })).toEqual(state)
    expect(await api.jobs.list()).toMatchObject([
      { id: job.id, rev: 3, complaint: 'Misses at idle', vehicle: 'Invented wagon' },
    ])
  })

  it('applies commands that come at once one after another, none lost', async () => {
    const { job } = await api.jobs.create(wanted)
    const states = await Promise.all(
      Array.from({ length: 12 }, (__, i) =>
        api.jobs.apply({ id: job.id, command: pull(`p${i}`, 1 + (i % 4), 140 + i) }),
      ),
    )
    expect(states.map(state => state.job.rev).toSorted((a = 0, b = 0) => a - b)).toEqual(
      Array.from({ length: 12 }, (__, i) => i + 2),
    )
    expect((await api.jobs.get({ id: job.id })).job.pulls).toHaveLength(12)
  })

  it('undoes and redoes to any depth, and never deletes a pull', async () => {
    const { job } = await api.jobs.create(wanted)
    const notes = Array.from({ length: 15 }, (__, i) => `note ${i}`)
    for (const text of notes)
      await api.jobs.apply({ id: job.id, command: { command: 'set notes', notes: text } })
    const withPull = await api.jobs.apply({ id: job.id, command: pull('p1', 3, 90) })
    expect(withPull.undo).toContain('90')
    let state = await api.jobs.undo({ id: job.id })
    expect(state.job.pulls).toMatchObject([{ id: 'p1', voided: { reason: 'taken back by undo' } }])
    for (const text of notes.toReversed()) {
      expect(state.job.notes).toBe(text)
      state = await api.jobs.undo({ id: job.id })
    }
    expect(state.job.notes).toBeUndefined()
    for (let step = 0; step < 16; step += 1) state = await api.jobs.redo({ id: job.id })
    expect(state.job.notes).toBe('note 14')
    expect(state.job.pulls[0]?.voided).toBeUndefined()
    expect(state.redo).toBeNull()
    expect((await faultOf(api.jobs.redo({ id: job.id }))).code).toBe('REFUSED')
  })

  it('begins a new visit of the same engine without the evidence', async () => {
    const { job } = await api.jobs.create(wanted)
    await api.jobs.apply({ id: job.id, command: pull('p1', 2, 148) })
    const copy = await api.jobs.duplicate({ id: job.id })
    expect(copy.job).toMatchObject({ engine: wanted.engine, layout, pulls: [], complaint: '' })
    expect(copy.job.id).not.toBe(job.id)
  })

  it('moves a job to the trash and back', async () => {
    const { job } = await api.jobs.create(wanted)
    expect(await api.jobs.remove({ id: job.id })).toEqual({ id: job.id })
    expect(await api.jobs.list()).toEqual([])
    expect((await faultOf(api.jobs.get({ id: job.id }))).code).toBe('NOT_FOUND')
    expect((await api.jobs.restore({ id: job.id })).job).toEqual(job)
    expect(await api.jobs.list()).toHaveLength(1)
  })

  it('keeps settings', async () => {
    expect(await api.settings.get()).toEqual(defaultSettings)
    const changed = { ...defaultSettings, technician: 'A. Nobody', paper: 'A4' as const }
    expect(await api.settings.set(changed)).toEqual(changed)
    expect(await api.settings.get()).toEqual(changed)
    const { job } = await api.jobs.create(wanted)
    expect(job.technician).toBe('A. Nobody')
  })

  it('keeps layouts of the shop, also those saved at the same time', async () => {
    const own = (id: string) => ({ ...layout, id, name: `Own ${id}` })
    await Promise.all(['own-a', 'own-b', 'own-c'].map(id => api.layouts.save(own(id))))
    expect((await api.layouts.own()).map(({ id, own: isOwn }) => [id, isOwn])).toEqual([
      ['own-a', true],
      ['own-b', true],
      ['own-c', true],
    ])
    expect(await api.layouts.remove({ id: 'own-b' })).toHaveLength(2)
    expect((await faultOf(api.layouts.remove({ id: 'own-b' }))).code).toBe('NOT_FOUND')
    expect((await faultOf(api.layouts.save(layout))).code).toBe('REFUSED')
    const crooked = await faultOf(api.layouts.save({ ...own('own-d'), firingOrder: [1, 1, 4, 2] }))
    expect(crooked).toMatchObject({
      code: 'REFUSED',
      data: { where: expect.stringContaining('firingOrder') },
    })
  })

  it('takes photos in as a task, with one change of the job, and shows them', async () => {
    const state = await api.jobs.create(wanted)
    const { job } = state
    const [first, second] = await Promise.all([jpegBytes(1, { width: 640, height: 480 }), jpegBytes(2)])
    const refs = [
      await host.addFile('plug 1.jpg', first),
      await host.addFile('prise \u00e9t\u00e9.jpg', second),
      await host.addFile('again.jpg', first),
      await host.addFile('not-a-photo.jpg', Buffer.from('hello')),
    ]
    const { taskId } = await api.intake.start({
      jobId: job.id,
      trayId: trayOf(state),
      refs,
      to: { cylinder: 3 },
    })
    const events = await eventsOf(taskId)
    expect(events.at(-1)).toMatchObject({
      kind: 'finished',
      result: {
        kind: 'intake',
        files: [
          { outcome: 'added', file: 'plug 1.jpg' },
          { outcome: 'added', file: 'prise \u00e9t\u00e9.jpg' },
          { outcome: 'duplicate', file: 'again.jpg', of: 'plug 1.jpg' },
          { outcome: 'refused', file: 'not-a-photo.jpg' },
        ],
      },
    })
    // A late watcher hears how it ended.
    expect(await eventsOf(taskId)).toEqual([events.at(-1)])

    const after = await api.jobs.get({ id: job.id })
    expect(after.job.rev).toBe(2)
    const shots = after.job.trays[0]?.slots.find(({ cylinder }) => cylinder === 3)?.shots ?? []
    expect(shots).toHaveLength(2)
    const sha256 = createHash('sha256').update(first).digest('hex')
    expect(shots[0]?.photo).toBe(sha256)

    const thumb = await host.ask(photoPath(sha256, 'thumb'))
    expect(thumb.status).toBe(200)
    expect(thumb.headers.get('content-type')).toBe('image/jpeg')
    const { width, height } = await sharp(Buffer.from(await thumb.arrayBuffer())).metadata()
    expect([width, height]).toEqual([320, 240])
    const full = await host.ask(photoPath(sha256, 'full'))
    expect(full.status).toBe(200)

    await api.jobs.undo({ id: job.id })
    expect((await api.jobs.get({ id: job.id })).job.trays[0]?.slots[2]?.shots).toEqual([])
    expect(await incoming(folder)).toEqual([])
  })

  it('cancels an import so that nothing of it is in the job', async () => {
    const state = await api.jobs.create(wanted)
    const refs: string[] = []
    for (let i = 0; i < 30; i += 1)
      refs.push(await host.addFile(`${i}.jpg`, await jpegBytes(100 + i, { width: 1200, height: 900 })))
    const { taskId } = await api.intake.start({ jobId: state.job.id, trayId: trayOf(state), refs })
    const events: TaskEvent[] = []
    const answers: { cancelled: boolean }[] = []
    for await (const event of await api.tasks.watch({ taskId })) {
      events.push(event)
      if (events.length === 2) answers.push(await api.tasks.cancel({ taskId }))
    }
    expect(answers).toEqual([{ cancelled: true }])
    expect(events.at(-1)).toEqual({ kind: 'cancelled' })
    expect(await api.tasks.cancel({ taskId })).toEqual({ cancelled: false })
    expect(await api.jobs.get({ id: state.job.id })).toEqual(state)
    expect(await incoming(folder)).toEqual([])
  })

  it('reads a recording: preview, evaluation, kept as a pull, drawn again', async () => {
    const { job } = await api.jobs.create(wanted)
    const made = starterRecording({ layout, percent: { 3: 75 }, noise: 0.05, rate: 2000, sync: 'cycle' })
    const bytes = new TextEncoder().encode(asCsv(made.recording))
    const test = 'relative compression' as const
    const ref = await host.addFile('cranking.csv', bytes)
    const { guess, columns } = await api.recordings.preview({ source: { ref }, test })
    expect(columns.map(column => column.unit)).toEqual(['s', 'A', 'V'])
    const evaluate = async (source: { ref: string } | { recording: string }) => {
      const { taskId } = await api.recordings.analyse({
        jobId: job.id,
        source,
        fileName: 'cranking.csv',
        test,
        mapping: guess,
      })
      const last = (await eventsOf(taskId)).at(-1)
      if (last?.kind !== 'finished' || last.result.kind !== 'recording') throw new Error(JSON.stringify(last))
      return last.result.analysis
    }
    const analysis = await evaluate({ ref })
    if (!analysis.entry) throw new Error('no entry')
    expect(analysis.entry.values.toSorted((a, b) => a.percent - b.percent)[0]?.cylinder).toBe(3)
    const { recording } = await api.recordings.keep({ ref })
    expect(recording).toBe(createHash('sha256').update(bytes).digest('hex'))
    expect(recording).toBe(analysis.entry.source.recording)
    const { job: after } = await api.jobs.apply({
      id: job.id,
      command: {
        command: 'add pull',
        pull: { id: 'r1', test, stage: 'as found', at: '2026-03-02T09:14:00Z', entry: analysis.entry },
      },
    })
    expect(after.pulls).toHaveLength(1)
    expect(await evaluate({ recording })).toEqual(analysis)
    const redrawn = await eventsOf((await api.recordings.redraw({ jobId: job.id, pullId: 'r1' })).taskId)
    expect(redrawn.at(-1)).toEqual({ kind: 'finished', result: { kind: 'recording', analysis } })
    const check = (await eventsOf((await api.catalogue.check({ mend: false })).taskId)).at(-1)
    expect(check).toMatchObject({ result: { report: { recordings: 1, problems: [] } } })

    const dropped = await host.addFile('other.csv', bytes)
    await api.recordings.discard({ ref: dropped })
    const { code, data } = await faultOf(api.recordings.preview({ source: { ref: dropped }, test }))
    expect(code).toBe('NOT_FOUND')
    expect(data).toMatchObject({ hint: 'Add it again.' })
    expect(await incoming(folder)).toEqual([])
  })

  it('cuts a table of readings into cells, whatever its separator and code page', async () => {
    const text = 'Cyl;Final (bar)\n1;"10,4"\n\n2;Zündung\n'
    const ref = await host.addFile('bench.csv', Buffer.from(text, 'latin1'))
    expect(await api.readingsCsv.read({ ref })).toEqual({
      fileName: 'bench.csv',
      separator: 'semicolon',
      rows: [
        { line: 1, cells: ['Cyl', 'Final (bar)'] },
        { line: 2, cells: ['1', '10,4'] },
        { line: 4, cells: ['2', 'Zündung'] },
      ],
    })
    expect((await api.readingsCsv.read({ ref, separator: 'tab' })).rows[0]?.cells).toHaveLength(1)
    const empty = await host.addFile('empty.csv', Buffer.from(' \n;\n'))
    expect((await faultOf(api.readingsCsv.read({ ref: empty }))).code).toBe('BAD_INPUT')
    await api.recordings.discard({ ref })
    await api.recordings.discard({ ref: empty })
    expect((await faultOf(api.readingsCsv.read({ ref }))).code).toBe('NOT_FOUND')
  })

  it('tells every window what changed', async () => {
    const stop = new AbortController()
    const heard: Change[] = []
    const changes = await api.catalogue.changes(undefined, { signal: stop.signal })
    const listening = (async () => {
      for await (const change of changes) {
        heard.push(change)
        if (heard.length === 3) return
      }
    })()
    const { job } = await api.jobs.create(wanted)
    await api.settings.set(defaultSettings)
    await api.jobs.remove({ id: job.id })
    await listening
    stop.abort()
    expect(heard).toEqual([
      { kind: 'job', id: job.id, rev: 1 },
      { kind: 'settings' },
      { kind: 'removed', id: job.id },
    ])
  })

  it('checks the catalogue as a task', async () => {
    await api.jobs.create(wanted)
    const { taskId } = await api.catalogue.check({ mend: false })
    const events = await eventsOf(taskId)
    expect(events.at(-1)).toMatchObject({
      kind: 'finished',
      result: { kind: 'check', report: { jobs: 1, photos: 0, problems: [] } },
    })
  })

  it('draws the report and gives it out at the export route', async () => {
    const { job } = await api.jobs.create(wanted)
    const { exportId, fileName, bytes } = await api.writeUp.pdf({ jobId: job.id, audience: 'customer' })
    expect(fileName).toMatch(/\.pdf$/)
    const answer = await host.ask(`/export/${exportId}`)
    expect(answer.headers.get('content-type')).toBe('application/pdf')
    const pdf = Buffer.from(await answer.arrayBuffer())
    expect(pdf.length).toBe(bytes)
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-')
  })

  it('loads the demonstration jobs once, and none when cancelled', async () => {
    const cancelled = await api.demo.load()
    await api.tasks.cancel(cancelled)
    expect((await eventsOf(cancelled.taskId)).at(-1)).toEqual({ kind: 'cancelled' })
    expect(await api.jobs.list()).toEqual([])
    const events = await eventsOf((await api.demo.load()).taskId)
    const jobs = await api.jobs.list()
    expect(jobs.length).toBeGreaterThan(3)
    expect(jobs.every(({ demo }) => demo)).toBe(true)
    expect(events.at(-1)).toMatchObject({ kind: 'finished', result: { kind: 'demo' } })
    const again = await eventsOf((await api.demo.load()).taskId)
    expect(again.at(-1)).toEqual({ kind: 'finished', result: { kind: 'demo', jobIds: [] } })
  }, 120_000)

  it('answers failures by code, with what, where and what to do', async () => {
    const state = await api.jobs.create(wanted)
    const { id } = state.job
    const tray = trayOf(state)
    const command: Command = { command: 'void pull', pullId: 'nobody', reason: 'misread' }
    const failures = {
      'unknown job': await faultOf(api.jobs.get({ id: 'nobody' })),
      'job to restore': await faultOf(api.jobs.restore({ id: 'nobody' })),
      'id of a wrong form': await faultOf(api.jobs.get({ id: '../jobs' })),
      'unknown field': await faultOf(api.settings.set(Object.assign({ extra: 1 }, defaultSettings))),
      'unknown pull': await faultOf(api.jobs.apply({ id, command })),
      'nothing to undo': await faultOf(api.jobs.undo({ id })),
      'unknown task': await faultOf(api.tasks.watch({ taskId: 'nobody' })),
      'task to cancel': await faultOf(api.tasks.cancel({ taskId: 'nobody' })),
      'unknown tray': await faultOf(api.intake.start({ jobId: id, trayId: 'nobody', refs: ['x'] })),
      'unknown file': await faultOf(api.intake.start({ jobId: id, trayId: tray, refs: ['nobody'] })),
      'report of no job': await faultOf(api.writeUp.pdf({ jobId: 'nobody', audience: 'shop' })),
      'too large': await faultOf(api.jobs.create({ ...wanted, complaint: 'x'.repeat(1024 * 1024) })),
      crooked: await faultOf(
        api.jobs.create({ ...wanted, layout: { ...layout, firingOrder: [1, 2, 3, 3] } }),
      ),
    }
    for (const [, { defined, data }] of Object.entries(failures)) {
      expect(defined).toBe(true)
      expect(data).toEqual({
        what: expect.stringMatching(/\S/),
        where: expect.any(String),
        hint: expect.stringMatching(/\S/),
      })
    }
    expect(Object.fromEntries(Object.entries(failures).map(([name, { code }]) => [name, code]))).toEqual({
      'unknown job': 'NOT_FOUND',
      'job to restore': 'NOT_FOUND',
      'id of a wrong form': 'BAD_INPUT',
      'unknown field': 'BAD_INPUT',
      'unknown pull': 'REFUSED',
      'nothing to undo': 'REFUSED',
      'unknown task': 'NOT_FOUND',
      'task to cancel': 'NOT_FOUND',
      'unknown tray': 'NOT_FOUND',
      'unknown file': 'NOT_FOUND',
      'report of no job': 'NOT_FOUND',
      'too large': 'TOO_LARGE',
      crooked: 'REFUSED',
    })
    expect(failures['id of a wrong form'].data).toMatchObject({ where: 'id' })
    expect(await api.jobs.get({ id })).toEqual(state)
  })

  it('only reads where another process holds the catalogue', async () => {
    const state = await api.jobs.create(wanted)
    const { readOnlyApi, close } = await openAgain(folder)
    const { id } = state.job
    const command: Command = { command: 'set notes', notes: 'no' }
    expect((await readOnlyApi.jobs.get({ id })).job).toEqual(state.job)
    for (const refused of [
      () => readOnlyApi.jobs.create(wanted),
      () => readOnlyApi.jobs.apply({ id, command }),
      () => readOnlyApi.jobs.remove({ id }),
      () => readOnlyApi.settings.set(defaultSettings),
      () => readOnlyApi.layouts.save({ ...layout, id: 'own-a' }),
      () => readOnlyApi.intake.start({ jobId: id, trayId: trayOf(state), refs: ['x'] }),
    ])
      expect(await faultOf(refused())).toMatchObject({ code: 'READ_ONLY', defined: true })
    await close()
    expect(await api.jobs.get({ id })).toEqual(state)
  })

  it('has been asked for every operation of the contract by the cases above', () => {
    expect([...called].toSorted()).toEqual(operationsOf(contract).toSorted())
  })
})

/** The same catalogue a second time, beside the host under test. */
async function openAgain(folder: string): Promise<{ readOnlyApi: Api; close: () => Promise<void> }> {
  const inMemory = hosts[0]
  if (!inMemory) throw new Error('no host')
  const { api, close } = await inMemory[1](folder)
  return { readOnlyApi: api, close }
}

const incoming = async (folder: string): Promise<string[]> =>
  existsSync(join(folder, 'incoming')) ? readdir(join(folder, 'incoming')) : []
