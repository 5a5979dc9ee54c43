// Codes as people type and paste them.
import { expect, it } from 'vitest'
import { readCodes } from './read-codes.ts'

it.each([
  ['P0302 P0171', ['P0302', 'P0171']],
  ['p0302,\n p0171; P0302', ['P0302', 'P0171']],
  ['U0100', ['U0100']],
])('reads %j', (text, codes) => expect(readCodes(text)).toEqual(codes))

it.each(['', 'P030', 'misfire', 'P0302 and P0171', 'X0302'])('refuses %j', text => {
  expect(readCodes(text)).toBeNull()
})
