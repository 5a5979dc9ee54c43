// When `npm start` builds again: whenever something of the source is newer than any part of what was built.
import { mkdirSync, mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { isStale } from './build-if-stale.js'

let root = ''
const put = (name: string) => {
  mkdirSync(dirname(join(root, name)), { recursive: true })
  writeFileSync(join(root, name), '')
}
const setAge = (path: string, seconds: number) => utimesSync(path, seconds, seconds)
/** Everything below a folder, and the folder, as old as that. */
const setAgeOfTree = (path: string, seconds: number) => {
  for (const entry of readdirSync(path, { withFileTypes: true }))
    if (entry.isDirectory()) setAgeOfTree(join(path, entry.name), seconds)
    else setAge(join(path, entry.name), seconds)
  setAge(path, seconds)
}

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'plugtray-stale-'))
  for (const name of ['shared/a.ts', 'shared/old.ts', 'electron/main.ts', 'renderer/app.tsx', 'package.json'])
    put(name)
  for (const name of ['main/main.js', 'main/browser-host.js', 'preload/preload.cjs', 'renderer/index.html'])
    put(`out/${name}`)
  setAgeOfTree(root, 1000)
  setAgeOfTree(join(root, 'out'), 2000)
})
afterEach(() => rmSync(root, { recursive: true, force: true }))

it('does not build what is fresh', () => {
  expect(isStale(root)).toBe(false)
})
it.each(['shared/a.ts', 'electron/main.ts', 'renderer/app.tsx', 'package.json'])('builds after %s', name => {
  setAge(join(root, name), 3000)
  expect(isStale(root)).toBe(true)
})
it('builds after a file was added or removed', () => {
  rmSync(join(root, 'shared/old.ts'))
  setAge(join(root, 'shared'), 3000)
  expect(isStale(root)).toBe(true)
})
it.each(['main/main.js', 'preload/preload.cjs', 'renderer/index.html'])(
  'builds when out/%s is missing',
  name => {
    rmSync(join(root, 'out', name))
    expect(isStale(root)).toBe(true)
  },
)
it('builds when one part is older than the sources, the others newer', () => {
  setAge(join(root, 'out/renderer/index.html'), 500)
  expect(isStale(root)).toBe(true)
})
it('does not build because a test changed', () => {
  put('shared/a.test.ts')
  setAge(join(root, 'shared/a.test.ts'), 3000)
  setAge(join(root, 'shared'), 1000)
  expect(isStale(root)).toBe(false)
})
