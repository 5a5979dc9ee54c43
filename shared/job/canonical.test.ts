// Canonical text against the examples of RFC 8785, and its laws.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonicalJson, sameContent } from './canonical.ts'

describe('canonical JSON', () => {
  it('is the text that RFC 8785 gives for its own example (section 3.2.2 and 3.2.3)', () => {
    const example: unknown = JSON.parse(String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`)
    expect(canonicalJson(example)).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],` +
        String.raw`"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    )
  })

  it('sorts keys by UTF-16 code units, as in the example of RFC 8785 section 3.2.3', () => {
    const example: unknown = JSON.parse(
      String.raw`{"\u20ac":1,"\r":2,"\ufb33":3,"1":4,"\ud83d\ude00":5,"\u0080":6,"\u00f6":7}`,
    )
    const values = [...canonicalJson(example).matchAll(/:(\d)/g)].map(match => Number(match[1]))
    expect(values).toEqual([2, 4, 6, 7, 1, 5, 3])
  })

  it('leaves out what is undefined and refuses what JSON cannot hold', () => {
    expect(canonicalJson({ b: undefined, a: [undefined, 1] })).toBe('{"a":[null,1]}')
    expect(() => canonicalJson({ a: Number.NaN })).toThrow(TypeError)
    expect(() => canonicalJson([Number.POSITIVE_INFINITY])).toThrow(TypeError)
    expect(() => canonicalJson({ a: 1n })).toThrow(TypeError)
  })

  it('reads back as the same value and does not depend on the order of fields', () => {
    fc.assert(
      fc.property(fc.jsonValue(), value => {
        const text = canonicalJson(value)
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)))
        expect(canonicalJson(reversed(value))).toBe(text)
        expect(sameContent(value, reversed(value))).toBe(true)
      }),
    )
  })
})

const reversed = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(reversed)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .toReversed()
      .map(([key, field]) => [key, reversed(field)]),
  )
}
