// Each file of a catalogue is deleted in turn: what is missing is said to be missing, never taken for empty; the rest stays.
import { createHash } from 'node:crypto'
import { cp, mkdtemp, readdir, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { fourInLine } from '../../../shared/job/testing/example-job.ts'
import type { CatalogueProblem } from '../../../shared/contract/task-schema.ts'
import type { Catalogue } from '../../../electron/services/store/catalogue.ts'
import { jpegBytes } from '../../fixtures/images/pictures.ts'
import { faultOf, jobCalled, open, saveAgain, withPhoto } from './example.ts'

let place = ''
let whole = ''
let photo = ''

beforeAll(async () => {
  place = await mkdtemp(join(tmpdir(), 'plugtray-missing-'))
  whole = join(place, 'whole')
  const catalogue = await open(whole)
  const bytes = await jpegBytes(1)
  photo = createHash('sha256').update(bytes).digest('hex')
  await catalogue.photos.put(bytes, photo, 'jpeg')
  await catalogue.photos.derived(photo, 'thumb')
  await catalogue.save(withPhoto(jobCalled('a'), photo, bytes.length))
  await saveAgain(catalogue, 'a', 'changed')
  await catalogue.save(jobCalled('b', 'in another month', 4))
  await catalogue.save(jobCalled('gone'))
  await catalogue.remove('gone')
  await catalogue.settings.set({ ...catalogue.settings.get(), technician: 'Ana' })
  await catalogue.layouts.set([{ ...fourInLine, own: true }])
  await catalogue.close()
})
afterAll(() => rm(place, { recursive: true, force: true }))

const filesOf = async (folder: string): Promise<string[]> => {
  const found = await readdir(folder, { recursive: true, withFileTypes: true })
  return found.filter(one => one.isFile()).map(one => relative(folder, join(one.parentPath, one.name)))
}

/** What an opened catalogue has of everything in it, and what a check says beyond that. */
async function seen(catalogue: Catalogue) {
  const codes: Record<string, string> = {}
  for (const id of ['a', 'b']) codes[id] = (await faultOf(() => catalogue.load(id)))?.code ?? 'whole'
  codes['gone'] = (await faultOf(() => catalogue.restore('gone')))?.code ?? 'whole'
  codes['photo'] = (await faultOf(() => catalogue.photos.open(photo)))?.code ?? 'whole'
  codes['settings'] = catalogue.settings.get().technician === 'Ana' ? 'whole' : 'default'
  codes['layouts'] = catalogue.layouts.get().length === 1 ? 'whole' : 'none'
  const { problems } = await catalogue.check({ mend: false })
  return {
    codes,
    listed: catalogue
      .list()
      .map(({ id }) => id)
      .toSorted(),
    problems: problems.map(({ file, kind }): [string, CatalogueProblem['kind']] => [file, kind]),
  }
}

const nothingLost = {
  codes: { a: 'whole', b: 'whole', gone: 'whole', photo: 'whole', settings: 'whole', layouts: 'whole' },
  listed: ['a', 'b', 'gone'],
  problems: [],
}
type Seen = Awaited<ReturnType<typeof seen>>

/** What is different when one file is gone. */
function expected(file: string): Partial<Seen> {
  const { codes } = nothingLost
  if (file === join('jobs', 'a', 'job.json'))
    return { codes: { ...codes, a: 'NOT_FOUND' }, problems: [['jobs/a/job.json', 'missing']] }
  if (file === join('jobs', 'b', 'job.json'))
    return { codes: { ...codes, b: 'NOT_FOUND' }, problems: [['jobs/b/job.json', 'missing']] }
  if (file === join('trash', 'gone', 'job.json'))
    return {
      codes: { ...codes, gone: 'NOT_FOUND' },
      listed: ['a', 'b'],
      problems: [['trash/gone/job.json', 'missing']],
    }
  if (file.startsWith('photos'))
    return {
      codes: { ...codes, photo: 'NOT_FOUND' },
      problems: [[`photos/${photo.slice(0, 2)}/${photo}`, 'missing']],
    }
  if (file === 'settings.json') return { codes: { ...codes, settings: 'default' } }
  if (file === 'layouts.json') return { codes: { ...codes, layouts: 'none' } }
  return {}
}

describe('each file deleted in turn', () => {
  it('is missed by name, and nothing else is touched', async () => {
    const files = await filesOf(whole)
    expect(files.length).toBeGreaterThan(9)
    const untouched = await open(whole)
    expect((await untouched.check({ mend: false })).problems).toEqual([])
    await untouched.close()
    for (const file of files) {
      const folder = join(place, 'one-less')
      await cp(whole, folder, { recursive: true, preserveTimestamps: true })
      await rm(join(folder, file))
      const catalogue = await open(folder)
      expect({ file, ...(await seen(catalogue)) }).toEqual({ file, ...nothingLost, ...expected(file) })
      await catalogue.close()
      for (const other of files.filter(name => name.startsWith('photos') && name !== file))
        expect(await readFile(join(folder, other))).toEqual(await readFile(join(whole, other)))
      await rm(folder, { recursive: true })
    }
    console.log(`missing files: ${files.length} files deleted in turn`)
  })

  it('a whole job folder too, as long as the index knows of it; taking it out of the list then ends that', async () => {
    const folder = join(place, 'no-folder')
    await cp(whole, folder, { recursive: true, preserveTimestamps: true })
    await rm(join(folder, 'jobs', 'a'), { recursive: true })
    const catalogue = await open(folder)
    expect(
      catalogue
        .list()
        .map(({ id }) => id)
        .toSorted(),
    ).toEqual(['a', 'b'])
    expect((await faultOf(() => catalogue.load('a')))?.code).toBe('NOT_FOUND')
    expect(catalogue.unreadable.map(({ id }) => id)).toEqual(['a'])
    const { problems } = await catalogue.check({ mend: true })
    expect(problems.map(({ file, kind, mended }) => [file, kind, mended])).toContainEqual([
      'jobs/a/job.json',
      'missing',
      false,
    ])
    await catalogue.remove('a')
    expect(catalogue.list().map(({ id }) => id)).toEqual(['b'])
    await catalogue.close()
    const later = await open(folder)
    expect(later.list().map(({ id }) => id)).toEqual(['b'])
    expect((await faultOf(() => later.load('never')))?.code).toBe('NOT_FOUND')
    await later.close()
  })
})
