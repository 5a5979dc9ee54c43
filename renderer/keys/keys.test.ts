// No key does two things in one context.
import { expect, it } from 'vitest'
import { keyCommands } from './keys.ts'

it('gives every key one meaning a context', () => {
  const seen = keyCommands.map(({ context, keys }) => `${context} ${keys}`)
  expect(seen.filter((one, at) => seen.indexOf(one) !== at)).toEqual([])
})
