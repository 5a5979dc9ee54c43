// The command line in process: shapes on stdout, words on stderr, exit 0, 1 and 2.
import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import { layoutById } from '../../shared/engine/layouts.ts'
import { newJob } from '../../shared/job/new-job.ts'
import { commands, runCommandLine } from './run.ts'

let folder = ''
let catalogue = ''

type Told = { status: number; out: string; err: string }

async function run(...args: string[]): Promise<Told> {
  let out = ''
  let err = ''
  const status = await runCommandLine(
    args,
    {
      out: text => {
        out += text
      },
      err: text => {
        err += text
      },
      signal: new AbortController().signal,
      env: { PLUGTRAY_CATALOGUE: catalogue },
    },
    '9.9.9',
  )
  return { status, out, err }
}

const importShape = z.strictObject({
  job: z.string(),
  filled: z.array(
    z.strictObject({
      cylinder: z.int(),
      plug: z.enum(['A', 'B']).optional(),
      photo: z.string(),
      file: z.string(),
    }),
  ),
  leftOver: z.array(z.string()),
  duplicates: z.array(z.strictObject({ file: z.string(), of: z.string() })),
  refused: z.array(z.strictObject({ file: z.string(), why: z.string() })),
})

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugtray-cli-'))
  catalogue = join(folder, 'catalogue')
  const photos = join(folder, 'photos')
  await mkdir(photos)
  for (let i = 1; i <= 5; i += 1) {
    const background = { r: 40 * i, g: 90, b: 120 }
    const jpeg = await sharp({ create: { width: 64, height: 48, channels: 3, background } })
      .jpeg()
      .toBuffer()
    await writeFile(join(photos, `IMG_${i === 5 ? 10 : i}.jpg`), jpeg)
    if (i === 1) await writeFile(join(photos, 'IMG_2_copy.jpg'), jpeg)
  }
  await writeFile(join(photos, 'note\u202e.jpg'), 'just words')
})
afterAll(() => rm(folder, { recursive: true, force: true }))

describe('help and wrong usage', () => {
  it('shows every command, and each command its examples first', async () => {
    const overview = await run('--help')
    expect(overview.status).toBe(0)
    for (const { name } of commands) {
      expect(overview.out).toContain(name)
      const help = await run(name, '--help')
      expect(help.status).toBe(0)
      expect(help.out.indexOf('Examples:')).toBeLessThan(help.out.indexOf('Usage:'))
      expect(help.err).toBe('')
    }
    expect((await run('--version')).out).toBe('9.9.9\n')
  })

  it.each([
    [[]],
    [['imprt']],
    [['import']],
    [['import', 'x', '--layout', 'i4']],
    [['import', 'x', '--layout', 'i4', '--order', 'sideways']],
    [['import', 'x', '--layout', 'i4', '--order', 'firing', '--start', 'two']],
    [['import', 'x', '--layout', 'i4', '--order', 'firing', '--per-slot', '1', '--gap', '3']],
    [['import', 'x', '--layout', 'i7', '--order', 'firing']],
    [['assess']],
    [['assess', 'a', 'b']],
    [['assess', 'a', '--colour']],
    [['write-up', 'a']],
    [['check', 'extra']],
    [['serve', '--port', '99999']],
  ])('%j is wrong usage: exit 2, nothing on stdout but help', async args => {
    const { status, err, out } = await run(...args)
    expect(status).toBe(2)
    // Without any command the overview is shown; otherwise stdout stays empty.
    expect(args.length === 0 ? err : out).toBe('')
    expect(args.length === 0 ? out : err).toContain('plugtray')
  })

  it('guesses what was meant', async () => {
    expect((await run('imprt')).err).toContain('Did you mean "import"?')
  })
})

describe('import, write-up and check', () => {
  let job = ''

  it('fills the slots in firing order and says what became of every file', async () => {
    const { status, out, err } = await run(
      'import',
      join(folder, 'photos'),
      '--layout',
      'i4',
      '--order',
      'firing',
      '--start',
      '3',
      '--json',
    )
    expect(status).toBe(0)
    expect(err).toBe('')
    const report = importShape.parse(JSON.parse(out))
    job = report.job
    // 1-3-4-2 beginning at 3, photos in natural order of their names.
    expect(report.filled.map(one => [one.cylinder, one.file])).toEqual([
      [3, 'IMG_1.jpg'],
      [4, 'IMG_2.jpg'],
      [2, 'IMG_3.jpg'],
      [1, 'IMG_4.jpg'],
    ])
    expect(report.leftOver).toEqual(['IMG_10.jpg'])
    expect(report.duplicates).toEqual([{ file: 'IMG_2_copy.jpg', of: 'IMG_1.jpg' }])
    expect(report.refused).toHaveLength(1)
    expect(report.refused[0]?.file).not.toContain('\u202e')
  })

  it('makes no job of a folder without a photo', async () => {
    const empty = join(folder, 'empty')
    await mkdir(empty)
    await writeFile(join(empty, 'words.jpg'), 'words')
    const { status, out } = await run('import', empty, '--layout', 'i4', '--order', 'cylinder', '--json')
    expect(status).toBe(1)
    expect(importShape.parse(JSON.parse(out))).toMatchObject({ job: '', filled: [] })
    expect(
      (await run('import', join(folder, 'nowhere'), '--layout', 'i4', '--order', 'cylinder')).status,
    ).toBe(1)
  })

  it('writes a PDF, replaces it, and leaves any other file alone', async () => {
    const out = join(folder, 'report.pdf')
    expect((await run('write-up', job, '--out', out)).status).toBe(0)
    expect((await readFile(out)).subarray(0, 5).toString()).toBe('%PDF-')
    expect((await run('write-up', job, '--out', out, '--for', 'customer')).status).toBe(0)
    const note = join(folder, 'note.txt')
    await writeFile(note, 'mine')
    expect((await run('write-up', job, '--out', note)).status).toBe(1)
    expect(await readFile(note, 'utf8')).toBe('mine')
    const link = join(folder, 'link.pdf')
    await symlink(note, link)
    expect((await run('write-up', job, '--out', link)).status).toBe(1)
    expect(await readFile(note, 'utf8')).toBe('mine')
    expect((await run('write-up', 'no-such-job', '--out', out)).status).toBe(1)
  })

  it('checks the catalogue: clean, then with a damaged photo named', async () => {
    const clean = await run('check', '--json')
    expect(clean.status).toBe(0)
    expect(z.object({ jobs: z.int(), photos: z.int() }).parse(JSON.parse(clean.out))).toEqual({
      jobs: 1,
      photos: 5,
    })
    const report = importShape.parse(
      JSON.parse(
        (await run('import', join(folder, 'photos'), '--layout', 'i4', '--order', 'cylinder', '--json')).out,
      ),
    )
    const photo = report.filled[0]?.photo ?? ''
    const file = join(catalogue, 'photos', photo.slice(0, 2), `${photo}.jpg`)
    const bytes = await readFile(file)
    bytes[40] = (bytes[40] ?? 0) ^ 1
    await writeFile(file, bytes)
    const damaged = await run('check')
    expect(damaged.status).toBe(1)
    expect(damaged.out).toContain(photo)
  })
})

describe('assess', () => {
  it('prints tests, cylinders and flags of a JOB.json that has neither revision nor hash', async () => {
    const layout = layoutById('i4')
    if (!layout) throw new Error('no layout')
    const at = '2026-03-02T09:14:00Z'
    const job = newJob({
      id: 'j',
      trayId: 't',
      now: at,
      complaint: 'Rough',
      engine: { vehicle: 'Pump' },
      layout,
    })
    const pull = (cylinder: number, value: number) => ({
      id: `p${cylinder}`,
      test: 'compression',
      stage: 'as found',
      at,
      cylinder,
      entry: { final: { value, unit: 'psi' } },
    })
    const path = join(folder, 'JOB.json')
    await writeFile(
      path,
      JSON.stringify({ ...job, pulls: [pull(1, 150), pull(2, 152), pull(3, 90), pull(4, 149)] }),
    )
    const { status, out, err } = await run('assess', path, '--json')
    expect(status).toBe(0)
    expect(err).toBe('')
    const shape = z.object({
      tests: z.array(
        z.object({
          test: z.string(),
          cylinder: z.int().optional(),
          value: z.number(),
          unit: z.string(),
          verdict: z.string(),
          limit: z.string(),
          why: z.string(),
        }),
      ),
      cylinders: z.array(
        z.object({ cylinder: z.int(), state: z.enum(['sound', 'watch', 'fault', 'unknown']) }),
      ),
      flags: z.array(z.object({ kind: z.string(), text: z.string() })),
    })
    const assessment = shape.parse(JSON.parse(out))
    expect(assessment.cylinders.find(one => one.cylinder === 3)?.state).toBe('fault')
    const text = await run('assess', path)
    expect(text.out).toMatch(
      / {2}3 {2}fault\n[\s\S]*likely cause: exhaust valve, \d+ %: compression for, [\d.e+]+ to 1\n/,
    )
    expect(assessment.cylinders.filter(one => one.state === 'fault')).toHaveLength(1)
    expect((await run('assess', path)).out).toContain('Cylinders')
  })

  it('names file and place of what is wrong', async () => {
    const path = join(folder, 'broken.json')
    for (const text of ['{"a":', '[]', '{"schemaVersion":99}', '']) {
      await writeFile(path, text)
      const { status, out, err } = await run('assess', path, '--json')
      expect(status).toBe(1)
      expect(out).toBe('')
      expect(err).toContain('broken.json')
    }
    expect((await run('assess', join(folder, 'nowhere.json'))).status).toBe(1)
  })
})
