// Long work as it is watched: late watchers, several at once, watchers that leave, cancelling, failures, closing.
import { afterEach, describe, expect, it, vi } from 'vitest'
import type { TaskEvent } from '../../shared/contract/task-schema.ts'
import { FaultError } from './fault.ts'
import { createTasks, type TaskWork } from './tasks.ts'

const demo: TaskEvent = { kind: 'finished', result: { kind: 'demo', jobIds: [] } }
const unknown = new FaultError('INTERNAL', { what: 'Unknown.', where: 'log', hint: 'Try again.' })
const createAll = () => createTasks(() => unknown)

/** Work that goes on when the test says so. */
function stepwise() {
  let report: Parameters<TaskWork>[0] | undefined
  let end: (error?: unknown) => void = () => undefined
  const work: TaskWork = call => {
    report = call
    return new Promise((resolve, reject) => {
      call.signal.addEventListener('abort', () => reject(call.signal.reason))
      end = error => (error === undefined ? resolve({ kind: 'demo', jobIds: [] }) : reject(error))
    })
  }
  return {
    work,
    step: (done: number) => report?.onProgress(done, 3, `step ${done}`),
    end: (error?: unknown) => end(error),
  }
}

async function all(events: AsyncIterable<TaskEvent>): Promise<TaskEvent[]> {
  const heard: TaskEvent[] = []
  for await (const event of events) heard.push(event)
  return heard
}

const kinds = (events: TaskEvent[]) => events.map(({ kind }) => kind)

afterEach(() => vi.useRealTimers())

describe('watching', () => {
  it('tells the state at once, then each one that a reader keeps up with, then the end', async () => {
    const tasks = createAll()
    const { work, step, end } = stepwise()
    const watcher = tasks.watch(tasks.start(work))
    expect((await watcher.next()).value).toMatchObject({ kind: 'progress', done: 0 })
    step(1)
    expect((await watcher.next()).value).toMatchObject({ kind: 'progress', done: 1 })
    const next = watcher.next()
    step(2)
    expect((await next).value).toMatchObject({ done: 2 })
    end()
    expect(await all(watcher)).toEqual([demo])
  })
  it('tells a slow reader the newest state, and never leaves out the end', async () => {
    const tasks = createAll()
    const { work, step, end } = stepwise()
    const watcher = tasks.watch(tasks.start(work))
    await watcher.next()
    for (const done of [1, 2, 3]) step(done)
    expect((await watcher.next()).value).toMatchObject({ done: 3 })
    step(3)
    end()
    await new Promise(resolve => setTimeout(resolve, 0))
    expect(await all(watcher)).toEqual([demo])
  })
  it('serves several watchers, and one that comes after the end', async () => {
    const tasks = createAll()
    const { work, end } = stepwise()
    const id = tasks.start(work)
    const both = [all(tasks.watch(id)), all(tasks.watch(id))]
    end()
    for (const events of await Promise.all(both)) expect(events.at(-1)).toEqual(demo)
    expect(await all(tasks.watch(id))).toEqual([demo])
  })
  it('ends with the signal of the one who watches, and the work goes on', async () => {
    const tasks = createAll()
    const { work, end } = stepwise()
    const id = tasks.start(work)
    const stop = new AbortController()
    const events = all(tasks.watch(id, stop.signal))
    await new Promise(resolve => setTimeout(resolve, 0))
    stop.abort()
    expect(kinds(await events)).toEqual(['progress'])
    expect(await all(tasks.watch(id, AbortSignal.abort()))).toEqual([])
    end()
    expect((await all(tasks.watch(id))).at(-1)).toEqual(demo)
  })
  it('says at once that a task is unknown, and forgets one a while after its end', async () => {
    vi.useFakeTimers()
    const tasks = createAll()
    expect(() => tasks.watch('nobody')).toThrow(FaultError)
    const id = tasks.start(() => Promise.resolve({ kind: 'demo', jobIds: [] }))
    await vi.advanceTimersByTimeAsync(9 * 60_000)
    expect(await all(tasks.watch(id))).toEqual([demo])
    await vi.advanceTimersByTimeAsync(2 * 60_000)
    expect(() => tasks.watch(id)).toThrow(FaultError)
  })
})

describe('ending', () => {
  it('cancels once, and not what has ended', async () => {
    const tasks = createAll()
    const { work } = stepwise()
    const id = tasks.start(work)
    expect(tasks.cancel(id)).toBe(true)
    expect((await all(tasks.watch(id))).at(-1)).toEqual({ kind: 'cancelled' })
    expect(tasks.cancel(id)).toBe(false)
    expect(() => tasks.cancel('nobody')).toThrow(FaultError)
  })
  it('is finished when the work was done before it heard of the cancelling', async () => {
    const tasks = createAll()
    let finish: () => void = () => undefined
    const id = tasks.start(
      () =>
        new Promise(resolve => {
          finish = () => resolve({ kind: 'demo', jobIds: [] })
        }),
    )
    tasks.cancel(id)
    finish()
    expect((await all(tasks.watch(id))).at(-1)).toEqual(demo)
  })
  it('tells an expected failure in its own words, any other by the id in the log', async () => {
    const tasks = createAll()
    const fault = new FaultError('DISK', { what: 'Full.', where: 'photos', hint: 'Make room.' })
    const failing = [fault, new TypeError('x')].map(error =>
      tasks.start(async () => {
        throw error
      }),
    )
    const ends: (TaskEvent | undefined)[] = []
    for (const id of failing) ends.push((await all(tasks.watch(id))).at(-1))
    expect(ends).toEqual([
      { kind: 'failed', code: 'DISK', fault: fault.fault },
      { kind: 'failed', code: 'INTERNAL', fault: unknown.fault },
    ])
  })
  it('waits for the work to stop when the app is closed', async () => {
    const tasks = createAll()
    let stopped = false
    tasks.start(
      ({ signal }) =>
        new Promise((_, reject) => {
          signal.addEventListener('abort', () =>
            setTimeout(() => {
              stopped = true
              reject(signal.reason)
            }, 20),
          )
        }),
    )
    await tasks.close()
    expect(stopped).toBe(true)
  })
})
