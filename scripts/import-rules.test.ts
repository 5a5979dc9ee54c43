// Proves that the import rules bite: each planted violation must be reported, and the clean file must not.
import { execFileSync, spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const root = resolve(import.meta.dirname, '..')
let folder = ''

const planted: Record<string, string> = {
  'shared/engine/node.ts': "import { readFileSync } from 'node:fs'\nexport const a = readFileSync",
  'shared/engine/bare-node.ts': "import path from 'path'\nexport const a = path",
  'shared/engine/upwards.ts': "export { b } from '../../electron/fine.ts'",
  'shared/engine/dom.ts': 'export const a = window.name',
  'shared/engine/view.ts': "import React from 'react'\nexport const a = React",
  'renderer/places/host.ts': "export const d = await import('../../electron/fine.ts')",
  'renderer/places/schema.ts':
    "import { jobSchema } from '../../shared/job/job-schema.ts'\nexport const a = jobSchema",
  'renderer/places/zod.ts': "import { z } from 'zod'\nexport const a = z",
  'electron/page.ts': "export { a } from '../renderer/places/zod.ts'",
  'model/runtime/host.ts': "export { b } from '../../electron/fine.ts'",
  'electron/cycle-a.ts': "import { g } from './cycle-b.ts'\nexport const f = () => g",
  'electron/services/writes.ts': "import { writeFileSync } from 'node:fs'\nexport const w = writeFileSync",
  'electron/services/writes-too.ts': "import { rename } from 'node:fs/promises'\nexport const w = rename",
}
const clean: Record<string, string> = {
  'electron/fine.ts': 'export const b = 1',
  'electron/cycle-b.ts': "import { f } from './cycle-a.ts'\nexport const g = () => f",
  'shared/job/job-schema.ts': 'export const jobSchema = 1\nexport type Job = number',
  'renderer/places/types.ts':
    "import type { Job } from '../../shared/job/job-schema.ts'\nexport const a: Job = 1",
  'electron/services/reads.ts': "import { readFile } from 'node:fs/promises'\nexport const r = readFile",
  'electron/services/store/disk.ts':
    "import { writeFileSync } from 'node:fs'\nexport const w = writeFileSync",
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'plugtray-rules-'))
  cpSync(join(root, '.oxlintrc.json'), join(folder, '.oxlintrc.json'))
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'))
  for (const [file, text] of Object.entries({ ...planted, ...clean })) {
    mkdirSync(dirname(join(folder, file)), { recursive: true })
    writeFileSync(join(folder, file), `${text}\n`)
  }
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('import rules', () => {
  it('report every planted violation and no clean file', () => {
    const run = spawnSync(
      process.execPath,
      [join(root, 'node_modules/oxlint/bin/oxlint'), '-c', '.oxlintrc.json', '--format', 'unix', '.'],
      { cwd: folder, encoding: 'utf8' },
    )
    const reported = new Set(run.stdout.split('\n').flatMap(line => /^([^:]+\.ts):\d+/.exec(line)?.[1] ?? []))
    expect(run.status).not.toBe(0)
    expect([...reported].toSorted()).toEqual([...Object.keys(planted), 'electron/cycle-b.ts'].toSorted())
  })

  it('type-check shared/ without Node and DOM types', () => {
    const tsc = join(root, 'node_modules/typescript/bin/tsc')
    const listed = execFileSync(process.execPath, [tsc, '-p', join(root, 'shared'), '--listFilesOnly'], {
      encoding: 'utf8',
    })
    expect(listed).toContain('job-schema.ts')
    expect(listed).not.toMatch(/@types\/node|lib\.dom\.d\.ts/)
  })
})
