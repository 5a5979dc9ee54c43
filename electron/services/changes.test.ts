// What a window hears of changes: everything since it began to listen, each job once where it did not keep up.
import { describe, expect, it } from 'vitest'
import type { Change } from '../../shared/contract/contract.ts'
import { createChanges } from './changes.ts'

const job = (id: string, rev: number): Change => ({ kind: 'job', id, rev })

async function take(events: AsyncIterator<Change>, count: number): Promise<Change[]> {
  const heard: Change[] = []
  for (let i = 0; i < count; i += 1) {
    const { done, value } = await events.next()
    if (done) break
    heard.push(value)
  }
  return heard
}

describe('a window', () => {
  it('hears what came between beginning to listen and the first read', async () => {
    const changes = createChanges()
    changes.tell(job('before', 1))
    const stream = changes.stream()
    changes.tell(job('a', 1))
    changes.tell({ kind: 'settings' })
    expect(await take(stream, 2)).toEqual([job('a', 1), { kind: 'settings' }])
  })
  it('is woken by the next change', async () => {
    const changes = createChanges()
    const next = take(changes.stream(), 1)
    await new Promise(resolve => setTimeout(resolve, 0))
    changes.tell(job('a', 1))
    expect(await next).toEqual([job('a', 1)])
  })
  it('that does not keep up hears the newest of each job, in the order of the newest', async () => {
    const changes = createChanges()
    const stream = changes.stream()
    for (let rev = 1; rev <= 1000; rev += 1) changes.tell(job('a', rev))
    changes.tell(job('b', 1))
    changes.tell({ kind: 'removed', id: 'a' })
    expect(await take(stream, 2)).toEqual([job('b', 1), { kind: 'removed', id: 'a' }])
  })
  it('hears of a change that came while it read another', async () => {
    const changes = createChanges()
    const stream = changes.stream()
    changes.tell(job('a', 1))
    await stream.next()
    changes.tell(job('a', 2))
    expect(await take(stream, 1)).toEqual([job('a', 2)])
  })
  it('hears what every other window hears', async () => {
    const changes = createChanges()
    const streams = [changes.stream(), changes.stream()]
    changes.tell(job('a', 1))
    for (const stream of streams) expect(await take(stream, 1)).toEqual([job('a', 1)])
  })
})

describe('the end', () => {
  it.each([
    ['with the signal', (stop: AbortController) => stop.abort()],
    ['with the app', (_: AbortController, close: () => void) => close()],
  ])('comes %s, also to one that waits', async (_, end) => {
    const changes = createChanges()
    const stop = new AbortController()
    const stream = changes.stream(stop.signal)
    const waiting = stream.next()
    await new Promise(resolve => setTimeout(resolve, 0))
    end(stop, () => changes.close())
    expect(await waiting).toEqual({ done: true, value: undefined })
  })
  it('comes at once to one whose signal had ended', async () => {
    const stream = createChanges().stream(AbortSignal.abort())
    expect((await stream.next()).done).toBe(true)
  })
})
