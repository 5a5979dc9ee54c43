import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createSemaphore } from './semaphore.ts'

const tick = () => new Promise<void>(resolve => setImmediate(resolve))

describe('the semaphore', () => {
  it('never lets more than its capacity run, runs everything, and is free again afterwards', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 1, max: 4 }),
        fc.array(
          fc.record({ weight: fc.integer({ min: 1, max: 6 }), ticks: fc.nat(3), fails: fc.boolean() }),
          {
            maxLength: 20,
          },
        ),
        async (capacity, turns) => {
          const semaphore = createSemaphore(capacity)
          let running = 0
          let most = 0
          const order: number[] = []
          const results = await Promise.allSettled(
            turns.map(({ weight, ticks, fails }, i) =>
              semaphore.run(
                async () => {
                  order.push(i)
                  running += Math.min(weight, capacity)
                  most = Math.max(most, running)
                  for (let t = 0; t < ticks; t++) await tick()
                  running -= Math.min(weight, capacity)
                  if (fails) throw new Error(String(i))
                },
                { weight },
              ),
            ),
          )
          expect(most).toBeLessThanOrEqual(capacity)
          expect(order).toEqual(turns.map((_, i) => i))
          expect(results.map(result => result.status === 'rejected')).toEqual(turns.map(turn => turn.fails))
          expect(await semaphore.run(() => Promise.resolve('free'), { weight: capacity })).toBe('free')
        },
      ),
      { numRuns: 60 },
    )
  })

  it('lets a waiting turn go when it is cancelled, and the next one in', async () => {
    const semaphore = createSemaphore(1)
    let finish = () => {}
    const first = semaphore.run(() => new Promise<void>(resolve => (finish = resolve)))
    const stop = new AbortController()
    const second = semaphore.run(() => Promise.resolve('second'), { signal: stop.signal })
    const third = semaphore.run(() => Promise.resolve('third'))
    stop.abort(new Error('cancelled'))
    await expect(second).rejects.toThrow('cancelled')
    finish()
    await first
    expect(await third).toBe('third')
    await expect(semaphore.run(() => Promise.resolve(1), { signal: stop.signal })).rejects.toThrow(
      'cancelled',
    )
  })
})
