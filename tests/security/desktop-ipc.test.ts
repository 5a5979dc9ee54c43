// E17, E20: who may ask through IPC, and what the built preload lets the page do.
import { readFileSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createContext, runInContext } from 'node:vm'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { start } from '../../electron/main.ts'
import { appVersion } from '../../electron/places-on-disk.ts'
import { openCatalogue } from '../../electron/services/store/catalogue.ts'
import * as electron from '../doubles/electron.ts'

vi.mock('electron', () => import('../doubles/electron.ts'))

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugtray-ipc-'))
  const catalogue = join(folder, 'catalogue')
  // Not new any more: a new one would be filled with the demonstration jobs meanwhile.
  await (await openCatalogue(catalogue, { appVersion })).close()
  process.env.PLUGTRAY_CATALOGUE = catalogue
  await start()
})
afterAll(async () => {
  electron.app.emit('window-all-closed')
  await vi.waitUntil(() => electron.asked.ended)
  delete process.env.PLUGTRAY_CATALOGUE
  await rm(folder, { recursive: true, force: true })
})

const refusal = { refused: expect.stringMatching(/\S/) }

describe('E17: the sender of a message', () => {
  const contents = () => electron.asked.windows[0]?.webContents ?? new electron.Contents()
  const ask = (event: electron.SenderEvent, channel = 'session') =>
    electron.asked.channels.get(channel)?.(event, undefined)

  it('is answered when it is the main frame of our page in our window', () => {
    expect(ask({ sender: contents(), senderFrame: contents().mainFrame })).toEqual({
      value: expect.stringMatching(/^[A-Za-z0-9_-]{43}$/),
    })
  })
  it.each([
    ['no frame', () => null],
    ['a frame inside the page', () => ({ url: 'app://plugtray/', parent: contents().mainFrame })],
    ['another main frame with our address', () => ({ url: 'app://plugtray/', parent: null })],
  ])('is refused when it is %s', (_, frame: () => electron.Frame | null) => {
    for (const channel of ['session', 'file-ref'])
      expect(ask({ sender: contents(), senderFrame: frame() }, channel)).toEqual(refusal)
  })
  it('is refused when it is another window', () => {
    const other = new electron.Contents()
    other.mainFrame = { url: 'app://plugtray/', parent: null }
    expect(ask({ sender: other, senderFrame: other.mainFrame })).toEqual(refusal)
    expect(ask({ sender: other, senderFrame: contents().mainFrame })).toEqual(refusal)
  })
  it.each(['https://evil.test/', 'app://plugtray.evil/', 'app://evil/', 'file:///x', 'about:blank', ''])(
    'is refused when our window is at "%s"',
    url => {
      const frame = contents().mainFrame
      const { url: before } = frame
      frame.url = url
      expect(ask({ sender: contents(), senderFrame: frame })).toEqual(refusal)
      frame.url = before
    },
  )
  it('may name only a whole path of a file', () => {
    const ref = (value: unknown) =>
      electron.asked.channels.get('file-ref')?.(
        { sender: contents(), senderFrame: contents().mainFrame },
        value,
      )
    for (const value of [
      undefined,
      null,
      '',
      'plug.jpg',
      '../plug.jpg',
      1,
      {},
      ['/a'],
      `/${'a'.repeat(5000)}`,
    ])
      expect(ref(value)).toEqual(refusal)
    expect(ref('/tmp/plug.jpg')).toEqual({ value: expect.stringMatching(/^[0-9a-f-]{36}$/) })
  })
})

it('opens no channel but these two', () => {
  expect([...electron.asked.channels.keys()]).toEqual(['session', 'file-ref'])
})

describe('E4, E20: the built preload', () => {
  const built = join(import.meta.dirname, '../../out/preload/preload.cjs')

  /** Runs it as the sandbox would: with `require` for electron alone. */
  function runPreload(invoke: (channel: string, value: unknown) => unknown) {
    const exposed: Record<string, Record<string, (...given: unknown[]) => Promise<unknown>>> = {}
    const required: string[] = []
    const double = {
      contextBridge: {
        exposeInMainWorld: (name: string, api: (typeof exposed)[string]) => {
          exposed[name] = api
        },
      },
      ipcRenderer: { invoke: (channel: string, value: unknown) => Promise.resolve(invoke(channel, value)) },
      webUtils: { getPathForFile: (file: { at?: string }) => file.at ?? '' },
    }
    const context = createContext({
      module: { exports: {} },
      exports: {},
      require: (name: string) => {
        required.push(name)
        if (name !== 'electron') throw new Error(`the sandbox has no ${name}`)
        return double
      },
    })
    runInContext(readFileSync(built, 'utf8'), context)
    return { exposed, required }
  }

  it('needs electron and nothing else', () => {
    expect(runPreload(() => undefined).required).toEqual(['electron'])
  })
  it('gives the page two functions and nothing of Electron', () => {
    const { exposed } = runPreload(() => undefined)
    expect(Object.keys(exposed)).toEqual(['plugtray'])
    expect(Object.keys(exposed.plugtray ?? {})).toEqual(['session', 'fileRef'])
    for (const value of Object.values(exposed.plugtray ?? {})) {
      expect(typeof value).toBe('function')
      expect(Object.keys(value)).toEqual([])
    }
  })
  it('hands on values and refusals, never an event or a path', async () => {
    const asked: unknown[] = []
    const { exposed } = runPreload((channel, value) => {
      asked.push([channel, value])
      return channel === 'session' ? { value: 'token' } : { refused: 'No such file.' }
    })
    expect(await exposed.plugtray?.session?.('anything', { sender: 1 })).toBe('token')
    await expect(exposed.plugtray?.fileRef?.({ at: '/tmp/a.jpg' })).rejects.toThrow('No such file.')
    expect(asked).toEqual([
      ['session', undefined],
      ['file-ref', '/tmp/a.jpg'],
    ])
  })
  it('says so where the host answers nothing that it knows', async () => {
    const { exposed } = runPreload(() => ({ value: { not: 'text' } }))
    await expect(exposed.plugtray?.session?.()).rejects.toThrow('did not answer')
  })
})
