// Laws of the check digit: any vehicle number with the right one passes, and one wrong character never does.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkVin } from './vin.ts'

const characters = Array.from('ABCDEFGHJKLMNPRSTUVWXYZ0123456789')
/** Characters of one group count the same: 49 CFR 565.15(c), table III. */
const groups = ['0', '1AJ', '2BKS', '3CLT', '4DMU', '5ENV', '6FW', '7GPX', '8HY', '9RZ']
const groupOf = (character: string) => groups.findIndex(group => group.includes(character))

const withDigit = fc.array(fc.constantFrom(...characters), { minLength: 17, maxLength: 17 }).map(picked => {
  const vin = picked.join('')
  return vin.slice(0, 8) + (checkVin(vin).expected ?? '?') + vin.slice(9)
})

describe('check digit', () => {
  it('accepts the digit it asks for, whatever the other places hold', () => {
    fc.assert(
      fc.property(withDigit, vin => {
        expect(checkVin(vin)).toEqual({ state: 'ok', expected: vin[8], normalised: vin })
      }),
    )
  })
  it('notices one wrong character, unless it counts the same as the right one', () => {
    fc.assert(
      fc.property(withDigit, fc.nat(16), fc.constantFrom(...characters), (vin, at, typed) => {
        fc.pre(at !== 8)
        const wrong = vin.slice(0, at) + typed + vin.slice(at + 1)
        const same = groupOf(typed) === groupOf(vin[at] ?? '')
        expect(checkVin(wrong).state).toBe(same ? 'ok' : 'check digit differs')
      }),
    )
  })
})

it('reads what people type', () => {
  expect(checkVin(' 1m8gdm9a xkp-042788 ')).toMatchObject({ state: 'ok', normalised: '1M8GDM9AXKP042788' })
  expect(checkVin('  ')).toEqual({ state: 'empty', normalised: '' })
  expect(checkVin('1M8GDM9AXKP04278').state).toBe('wrong length')
  for (const letter of ['I', 'O', 'Q', '*', 'Ä'])
    expect(checkVin(`1M8GDM9AXKP${letter}42788`).state).toBe('bad characters')
})
