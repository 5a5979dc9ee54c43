import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createHeicDecoder, type HeicDecoder } from './heic-decoder.ts'

let folder: string
let bytes: Buffer
const open: HeicDecoder[] = []

function decoder(options: Parameters<typeof createHeicDecoder>[0] = {}): HeicDecoder {
  const made = createHeicDecoder(options)
  open.push(made)
  return made
}

/** A worker that misbehaves as told, in place of the real one. */
async function workerDoing(name: string, body: string): Promise<string> {
  const file = join(folder, `${name}.mjs`)
  await writeFile(
    file,
    `import { parentPort } from 'node:worker_threads'\nparentPort.on('message', ({ id }) => { ${body} })\n`,
  )
  return file
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'heic-'))
  bytes = await readFile(new URL('../../../tests/fixtures/images/srgb.heic', import.meta.url))
})
afterAll(async () => {
  await Promise.all(open.map(one => one.close()))
  await rm(folder, { recursive: true })
})

describe('the HEIC decoder', () => {
  it('decodes one after the other, and again after its thread has ended when idle', async () => {
    const heic = decoder({ idleMs: 20 })
    const [a, b] = await Promise.all([heic.toTiff(bytes), heic.toTiff(bytes)])
    expect(a).toEqual(b)
    expect(heic.running).toBe(true)
    await pause(400)
    expect(heic.running).toBe(false)
    expect(await heic.toTiff(bytes)).toEqual(a)
  })

  it('ends its thread at once when cancelled, and works for the next picture', async () => {
    const stuck = await workerDoing('stuck', 'for (;;) {}')
    const heic = decoder({ workerFile: stuck })
    const stop = new AbortController()
    const waiting = heic.toTiff(bytes, undefined, stop.signal)
    await pause(100)
    stop.abort(new Error('cancelled'))
    await expect(waiting).rejects.toThrow('cancelled')
    expect(heic.running).toBe(false)
  })

  it('does not begin when cancelled before', async () => {
    const heic = decoder()
    await expect(heic.toTiff(bytes, undefined, AbortSignal.abort(new Error('before')))).rejects.toThrow(
      'before',
    )
    expect(heic.running).toBe(false)
  })

  it('gives up on a decoder that never comes back', async () => {
    const heic = decoder({ workerFile: await workerDoing('endless', 'for (;;) {}'), limitMs: 200 })
    await expect(heic.toTiff(bytes)).rejects.toThrow('took too long')
    expect(heic.running).toBe(false)
  })

  it.each([
    ['throws', `throw new Error('boom')`],
    ['ends', 'process.exit(3)'],
    ['fills its memory', 'const all = []; for (;;) all.push(new Array(1e6).fill(id))'],
    [
      'lies about the size',
      'parentPort.postMessage({ id, width: 4000, height: 4000, rgba: new Uint8Array(16) })',
    ],
    ['answers nonsense', `parentPort.postMessage('done')`],
    [
      'answers another question',
      'parentPort.postMessage({ id: id + 1, width: 1, height: 1, rgba: new Uint8Array(4) })',
    ],
    [
      'adds a field',
      'parentPort.postMessage({ id, width: 1, height: 1, rgba: new Uint8Array(4), path: "/" })',
    ],
    ['says that it cannot', `parentPort.postMessage({ id, error: 'no' })`],
  ])('refuses the picture when its thread %s', async (name, body) => {
    const heic = decoder({ workerFile: await workerDoing(name.replaceAll(' ', '-'), body) })
    await expect(heic.toTiff(bytes)).rejects.toThrow('This HEIC is damaged')
  })

  it('refuses with one line when the build has no worker', async () => {
    const heic = decoder({ workerFile: join(folder, 'none.mjs') })
    await expect(heic.toTiff(bytes)).rejects.toThrow('a part of Plugtray is missing')
  })
})
