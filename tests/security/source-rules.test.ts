// C3, E6, E15, E17 and others, held on the sources: dangerous calls stand in one known place or nowhere.
import { execFileSync, spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const root = resolve(import.meta.dirname, '../..')

/** Files of the program (tests apart) that hold the text. */
function filesWith(pattern: RegExp): string[] {
  const listed = execFileSync('git', ['ls-files', 'electron', 'renderer', 'shared'], { cwd: root }).toString()
  return listed
    .split('\n')
    .filter(name => /\.(ts|tsx|js|html)$/.test(name) && !/\.test\.tsx?$/.test(name))
    .filter(name => pattern.test(readFileSync(join(root, name), 'utf8')))
}

describe('one place or none', () => {
  it.each([
    ['E6: a window is made', /new BrowserWindow\b/, ['electron/desktop/window.ts']],
    ['E17: a channel is opened', /ipcMain\.(handle|on|once|handleOnce)\b/, ['electron/desktop/ipc.ts']],
    ['E20: the bridge is filled', /exposeInMainWorld/, ['electron/preload.ts']],
    [
      'E15: something is opened outside',
      /\bshell\.(open|show|trash)|openExternal|openPath|showItemInFolder/,
      [],
    ],
    ['C7: crash reports or updates', /crashReporter|autoUpdater/, []],
    ['H4: a cookie', /set-cookie|document\.cookie/i, []],
    ['H3: another origin is let in', /access-control-allow/i, []],
    ['H11: lenient parsing', /insecureHTTPParser: true/, []],
    ['C3: text becomes markup', /dangerouslySetInnerHTML|\.innerHTML\s*=|insertAdjacentHTML/, []],
    ['C3: text becomes code', /\beval\(|new Function\(/, []],
    ['the network is listened on', /\.listen\(/, ['electron/http/server.ts']],
  ])('%s', (_, pattern, places) => {
    expect(filesWith(pattern)).toEqual(places)
  })
})

describe('C3: the linter refuses', () => {
  let folder = ''
  const planted: Record<string, string> = {
    'renderer/markup.tsx': 'export const A = () => <p dangerouslySetInnerHTML={{ __html: "x" }} />',
    'renderer/eval.ts': "export const a: unknown = eval('1')",
    'renderer/function.ts': "export const a = new Function('return 1')",
  }
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'plugtray-markup-'))
    for (const name of ['.oxlintrc.json', 'tsconfig.json']) cpSync(join(root, name), join(folder, name))
    symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'))
    for (const [name, text] of Object.entries({ ...planted, 'renderer/fine.ts': 'export const a = 1' })) {
      mkdirSync(dirname(join(folder, name)), { recursive: true })
      writeFileSync(join(folder, name), `${text}\n`)
    }
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  it('each planted violation and nothing else', () => {
    const { stdout } = spawnSync('npx', ['--no-install', 'oxlint', '--format', 'unix', 'renderer'], {
      cwd: folder,
      encoding: 'utf8',
      shell: process.platform === 'win32',
    })
    const reported = [...Object.keys(planted), 'renderer/fine.ts'].filter(name => stdout.includes(name))
    expect(reported).toEqual(Object.keys(planted))
  })
})
