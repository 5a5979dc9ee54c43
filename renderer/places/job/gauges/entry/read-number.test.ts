// What the readers of an entry take, and what they refuse to guess.
import { describe, expect, it } from 'vitest'
import { readCount, readOhms, readPuffs, readRpm, readSize, readTrim } from './read-number.ts'

describe('numbers of an entry', () => {
  it.each([
    ['4.7k', 4700],
    ['4,7 kΩ', 4700],
    ['1M', 1e6],
    ['820', 820],
    ['12 ohms', 12],
  ])('reads %s as ohms', (text, ohms) => expect(readOhms(text)).toBeCloseTo(ohms))

  it.each(['', 'k', '-3', '1 2', 'open', '9999999G'])('refuses %j as ohms', text => {
    expect(readOhms(text)).toBeNull()
  })

  it('keeps to whole numbers and to what a job may hold', () => {
    expect([readCount('12'), readCount('1.5'), readCount('70000')]).toEqual([12, null, null])
    expect([readPuffs('5'), readPuffs('0')]).toEqual([5, null])
    expect([readRpm('650'), readRpm('-1')]).toEqual([650, null])
    expect([readTrim('-12,5'), readTrim('140')]).toEqual([-12.5, null])
    expect([readSize('0'), readSize('2')]).toEqual([null, 2])
  })
})
