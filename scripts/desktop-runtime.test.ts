// Whether the desktop runtime counts as present, and that fetching it is tried no more than is decent.
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { fetchRuntime, findRuntime, runtimePlaces } from './desktop-runtime.js'

let root = ''
const put = (name: string, text: string) => {
  const path = join(root, 'node_modules/electron', name)
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, text)
}
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'plugtray-runtime-'))
  put('package.json', '{"version":"45.4.1"}')
})
afterEach(() => rmSync(root, { recursive: true, force: true }))

const install = (version = '45.4.1') => {
  put('dist/version', version)
  put('path.txt', 'electron')
  put('dist/electron', '')
}
const program = () => join(root, 'node_modules/electron/dist/electron')

describe('the runtime is present', () => {
  it('when its version is that of the package and its program exists', () => {
    install()
    expect(findRuntime(root, {})).toBe(program())
  })
  it('when the version is written with a v in front', () => {
    install('v45.4.1\n')
    expect(findRuntime(root, {})).toBe(program())
  })
  it('where the override says', () => {
    put('../own/electron', '')
    put('path.txt', 'electron')
    const folder = join(root, 'node_modules/own')
    expect(findRuntime(root, { ELECTRON_OVERRIDE_DIST_PATH: folder })).toBe(join(folder, 'electron'))
    expect(findRuntime(root, { ELECTRON_OVERRIDE_DIST_PATH: join(root, 'nowhere') })).toBeUndefined()
  })
})

describe('the runtime is absent', () => {
  it.each([
    ['nothing was fetched', () => undefined],
    ['it is of another version', () => install('44.0.0')],
    [
      'its program is gone',
      () => {
        install()
        rmSync(program())
      },
    ],
    [
      'nothing names its program',
      () => {
        install()
        put('path.txt', '')
      },
    ],
    ['the package is gone', () => rmSync(join(root, 'node_modules'), { recursive: true })],
  ])('when %s', (_, arrange) => {
    arrange()
    expect(findRuntime(root, {})).toBeUndefined()
  })
})

describe('fetching', () => {
  const online = { env: process.env, resolveName: () => Promise.resolve() }
  /** Stands for electron's own installer; counts its runs in a file. */
  const installer = (work: string) =>
    put(
      'install.js',
      `const fs = require('fs'); const at = __dirname + '/runs'; fs.appendFileSync(at, 'x'); ${work}`,
    )
  const runs = () => {
    const file = join(root, 'node_modules/electron/runs')
    return existsSync(file) ? readFileSync(file, 'utf8').length : 0
  }
  const works = `fs.mkdirSync(__dirname + '/dist', { recursive: true })
    fs.writeFileSync(__dirname + '/dist/version', '45.4.1'); fs.writeFileSync(__dirname + '/path.txt', 'electron')
    fs.writeFileSync(__dirname + '/dist/electron', '')`

  it('gives the program where it works', async () => {
    installer(works)
    expect(await fetchRuntime(root, online)).toEqual({ program: program() })
  })
  it('is not tried where the name is not known or not answered in time', async () => {
    installer(works)
    const unknown = { ...online, resolveName: () => Promise.reject(new Error('ENOTFOUND')) }
    expect(await fetchRuntime(root, unknown)).toEqual({ why: 'github.com cannot be reached' })
    const since = performance.now()
    const silent = { ...online, resolveName: () => new Promise(() => {}) }
    expect(await fetchRuntime(root, silent)).toEqual({ why: 'github.com cannot be reached' })
    expect(performance.now() - since).toBeLessThan(4000)
    expect(runs()).toBe(0)
  })
  it('asks for the mirror that the person set', async () => {
    const asked: string[] = []
    const resolveName = (host: string) => {
      asked.push(host)
      return Promise.reject(new Error('ENOTFOUND'))
    }
    await fetchRuntime(root, { env: { ELECTRON_MIRROR: 'https://mirror.test/electron/' }, resolveName })
    expect(asked).toEqual(['mirror.test'])
  })
  it('is tried once a day when it failed, or when it is asked for by name', async () => {
    installer('process.exit(1)')
    let now = 1_000_000_000_000
    const attempt = (again = false) => fetchRuntime(root, { ...online, again, now: () => now })
    expect((await attempt()).why).toContain('failed')
    expect((await attempt()).why).toContain('within the last day')
    expect(runs()).toBe(1)
    await attempt(true)
    expect(runs()).toBe(2)
    now += 24 * 60 * 60_000
    await attempt()
    expect(runs()).toBe(3)
  })
  it('forgets a failure when it worked since, or the version is another', async () => {
    installer('process.exit(1)')
    await fetchRuntime(root, online)
    expect(existsSync(runtimePlaces(root).failure)).toBe(true)
    put('package.json', '{"version":"45.4.2"}')
    await fetchRuntime(root, online)
    expect(runs()).toBe(2)
    put('package.json', '{"version":"45.4.1"}')
    installer(works)
    await fetchRuntime(root, { ...online, again: true })
    expect(existsSync(runtimePlaces(root).failure)).toBe(false)
  })
  it('is stopped when it takes too long', async () => {
    installer('setInterval(() => {}, 1000)')
    const since = performance.now()
    expect((await fetchRuntime(root, { ...online, limitMs: 300 })).why).toContain('too long')
    expect(performance.now() - since).toBeLessThan(5000)
  })
  it('does not believe an installer that says it worked and left nothing', async () => {
    installer('')
    expect((await fetchRuntime(root, online)).why).toContain('failed')
  })
})
