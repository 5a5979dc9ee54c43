// Work under one key keeps its order and survives failures; other keys do not wait.
import { describe, expect, it } from 'vitest'
import { turns } from './turns.ts'

describe('turns', () => {
  it('do one after another under one key, also after a failure, and do not hold up another key', async () => {
    const inTurn = turns()
    const order: string[] = []
    const slow = async (name: string) => {
      order.push(`${name} begins`)
      await new Promise(resolve => setTimeout(resolve, 5))
      order.push(`${name} ends`)
      return name
    }
    const results = await Promise.allSettled([
      inTurn('job', () => slow('first')),
      inTurn('job', async () => {
        await slow('second')
        throw new Error('second fails')
      }),
      inTurn('job', () => slow('third')),
      inTurn('other', async () => order.push('other')),
    ])
    expect(results.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled', 'fulfilled'])
    expect(order.filter(line => line !== 'other')).toEqual(
      ['first', 'second', 'third'].flatMap(name => [`${name} begins`, `${name} ends`]),
    )
    expect(order.indexOf('other')).toBeLessThan(order.indexOf('second begins'))
  })
})
