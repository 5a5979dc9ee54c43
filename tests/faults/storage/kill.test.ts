// A process that is killed at any moment loses nothing that it acknowledged, tears nothing, and leaves nothing behind.
import { mkdtemp, readdir, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { isLeftOver } from '../../../electron/services/store/durable-file.ts'
import { type Bundle, bundleChild, startChild } from './bundle-child.ts'
import { isLong, open } from './example.ts'

const rounds = isLong ? 200 : 15
let bundle: Bundle
let folder = ''

beforeAll(async () => {
  bundle = await bundleChild('edit-jobs')
  folder = await mkdtemp(join(tmpdir(), 'plugtray-kill-'))
})
afterAll(async () => {
  bundle.remove()
  await rm(folder, { recursive: true, force: true })
})

/** What the child said of each job: what it acknowledged last, and what was under way when it was killed. */
type Said = { held: Map<string, string>; begun: Map<string, string>; acknowledged: number }

/** Kills while a change is under way: a moment after the child said that it begins one. */
async function editUntilKilled(start: number): Promise<Said> {
  const afterLines = 4 + Math.floor(Math.random() * 40)
  const afterMs = Math.random() * 12
  let lines = 0
  const child = startChild(bundle, folder, String(start))
  const said: Said = { held: new Map(), begun: new Map(), acknowledged: 0 }
  expect(await child.line()).toBe('ready')
  for (let line = await child.line(); line !== null; line = await child.line()) {
    // A line that the kill cut in two says nothing.
    const [word, id, state] = line.split(' ')
    if (id === undefined || state === undefined) continue
    lines += 1
    if (word === 'begin') said.begun.set(id, state)
    if (word === 'begin' && lines >= afterLines) setTimeout(() => child.process.kill('SIGKILL'), afterMs)
    if (word === 'done') {
      said.held.set(id, state)
      said.begun.delete(id)
      said.acknowledged += 1
    }
  }
  await child.ended
  return said
}

/** In the words of the child: the number of the last change, or "removed". */
async function stateOf(catalogue: Awaited<ReturnType<typeof open>>, id: string): Promise<string> {
  return catalogue.has(id) ? ((await catalogue.load(id)).complaint.split(' ')[1] ?? '?') : 'removed'
}

const temporary = async (): Promise<string[]> =>
  (await readdir(folder, { recursive: true })).filter(isLeftOver)

describe('a process that is killed while it works', () => {
  it('loses and tears nothing, and the next one takes over', async () => {
    const before = new Map<string, string>()
    const lost: string[] = []
    let acknowledged = 0
    let leftBehind = 0
    let slowest = 0
    for (let round = 0; round < rounds; round += 1) {
      const said = await editUntilKilled(round * 1_000_000)
      acknowledged += said.acknowledged
      const left = await temporary()
      leftBehind += left.length
      const begun = performance.now()
      const catalogue = await open(folder)
      slowest = Math.max(slowest, performance.now() - begun)
      expect(catalogue.readOnly).toBeNull()
      const still = await temporary()
      lost.push(...left.filter(name => still.includes(name)).map(name => `round ${round}: ${name} stays`))
      for (const id of ['a', 'b', 'c', 'd']) {
        const state = await stateOf(catalogue, id)
        const held = said.held.get(id) ?? before.get(id) ?? 'removed'
        if (state !== held && state !== said.begun.get(id))
          lost.push(`round ${round}: ${id} is ${state}, acknowledged was ${held}`)
        before.set(id, state)
      }
      const { problems } = await catalogue.check({ mend: false })
      lost.push(...problems.map(({ file, kind }) => `round ${round}: check says ${file} is ${kind}`))
      // The child begins by bringing everything back.
      for (const id of ['a', 'b', 'c', 'd'])
        if (!catalogue.has(id) && before.get(id) === 'removed')
          await catalogue.restore(id).then(
            job => before.set(id, job.complaint.split(' ')[1] ?? '?'),
            () => undefined,
          )
      await catalogue.close()
    }
    console.log(
      `kill -9: ${rounds} rounds, ${acknowledged} changes acknowledged, ${lost.length} lost or torn, ${leftBehind} temporary files left and cleared; slowest start after a kill ${slowest.toFixed(0)} ms`,
    )
    expect(lost).toEqual([])
    expect(acknowledged).toBeGreaterThan(rounds)
  })
})
