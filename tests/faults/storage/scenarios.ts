// What people do to a catalogue, step by step, with a note before each step of what it may come to and after it of what must hold.
import { createHash } from 'node:crypto'
import type { Catalogue } from '../../../electron/services/store/catalogue.ts'
import { jobCalled, saveAgain, withPhoto } from './example.ts'

/** State of one thing as a short text, e.g. "in jobs: burns oil" or "in trash: burns oil". */
export class Promised {
  /** Acknowledged last. */
  readonly held = new Map<string, string>()
  /** Under way: either this or what is held. */
  readonly possible = new Map<string, string>()

  async step(thing: string, state: string, work: () => Promise<unknown>): Promise<void> {
    this.possible.set(thing, state)
    await work()
    this.held.set(thing, state)
    this.possible.delete(thing)
  }

  copy(): Promised {
    const other = new Promised()
    for (const [thing, state] of this.held) other.held.set(thing, state)
    for (const [thing, state] of this.possible) other.possible.set(thing, state)
    return other
  }
}

export const nowhere = 'nowhere'
export const inJobs = (complaint: string): string => `in jobs: ${complaint}`
export const inTrash = (complaint: string): string => `in trash: ${complaint}`

export type Scenario = {
  name: string
  /** What is there before; not part of what is tried. */
  before?: (catalogue: Catalogue, promised: Promised) => Promise<void>
  run: (catalogue: Catalogue, promised: Promised) => Promise<void>
}

const save = (catalogue: Catalogue, promised: Promised, id: string, complaint: string) =>
  promised.step(id, inJobs(complaint), () => saveAgain(catalogue, id, complaint))
const create = (catalogue: Catalogue, promised: Promised, id: string, complaint: string) =>
  promised.step(id, inJobs(complaint), () => catalogue.save(jobCalled(id, complaint)))
const remove = (catalogue: Catalogue, promised: Promised, id: string, complaint: string) =>
  promised.step(id, inTrash(complaint), () => catalogue.remove(id))

const oneJob: Scenario['before'] = (catalogue, promised) => create(catalogue, promised, 'a', 'first')

export const scenarios: readonly Scenario[] = [
  { name: 'create a job', run: (catalogue, promised) => create(catalogue, promised, 'a', 'first') },
  {
    name: 'save a job',
    before: oneJob,
    run: (catalogue, promised) => save(catalogue, promised, 'a', 'second'),
  },
  {
    name: 'save until old versions go',
    before: async (catalogue, promised) => {
      await create(catalogue, promised, 'a', 'version 0')
      for (let n = 1; n < 5; n += 1) await save(catalogue, promised, 'a', `version ${n}`)
    },
    run: async (catalogue, promised) => {
      for (let n = 5; n < 8; n += 1) await save(catalogue, promised, 'a', `version ${n}`)
    },
  },
  {
    name: 'remove a job',
    before: oneJob,
    run: (catalogue, promised) => remove(catalogue, promised, 'a', 'first'),
  },
  {
    name: 'restore a job and go on with it',
    before: async (catalogue, promised) => {
      await create(catalogue, promised, 'a', 'first')
      await remove(catalogue, promised, 'a', 'first')
    },
    run: async (catalogue, promised) => {
      await promised.step('a', inJobs('first'), () => catalogue.restore('a'))
      await save(catalogue, promised, 'a', 'after the trash')
    },
  },
  {
    name: 'remove a job whose id is in the trash already',
    before: async (catalogue, promised) => {
      await create(catalogue, promised, 'a', 'first')
      await remove(catalogue, promised, 'a', 'first')
      await create(catalogue, promised, 'a', 'namesake')
    },
    run: (catalogue, promised) => remove(catalogue, promised, 'a', 'namesake'),
  },
  {
    name: 'two jobs at once',
    before: oneJob,
    run: async (catalogue, promised) => {
      await Promise.all([
        save(catalogue, promised, 'a', 'second'),
        create(catalogue, promised, 'b', 'beside it'),
      ])
    },
  },
  {
    name: 'change settings',
    run: async (catalogue, promised) => {
      for (const technician of ['Ana', 'Ben'])
        await promised.step('settings', `technician ${technician}`, () =>
          catalogue.settings.set({ ...catalogue.settings.get(), technician }),
        )
    },
  },
  {
    name: 'take a photo in and show it',
    before: oneJob,
    run: async (catalogue, promised) => {
      const bytes = Buffer.from('stands for a picture '.repeat(60))
      const photo = createHash('sha256').update(bytes).digest('hex')
      await promised.step(`photo ${photo}`, 'kept', () => catalogue.photos.put(bytes, photo, 'jpeg'))
      const job = withPhoto(await catalogue.load('a'), photo, bytes.length)
      await promised.step('a', inJobs('with a photo'), () =>
        catalogue.save({ ...job, complaint: 'with a photo' }),
      )
    },
  },
  {
    name: 'write the list and close',
    before: oneJob,
    run: async (catalogue, promised) => {
      await create(catalogue, promised, 'b', 'in another month')
      await catalogue.close()
    },
  },
]

/** What an opened catalogue shows of a thing that was promised. */
export async function stateOf(catalogue: Catalogue, thing: string, trash: (id: string) => Promise<string>) {
  if (thing === 'settings') {
    const { technician } = catalogue.settings.get()
    return technician === '' ? nowhere : `technician ${technician}`
  }
  if (thing.startsWith('photo ')) {
    const sha256 = thing.slice('photo '.length)
    if (!(await catalogue.photos.has(sha256))) return nowhere
    await catalogue.photos.open(sha256)
    return 'kept'
  }
  if (catalogue.has(thing)) return inJobs((await catalogue.load(thing)).complaint)
  return trash(thing)
}
