import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { shownName } from './shown-name.ts'

describe('a shown name', () => {
  it.each([
    ['IMG_0012.jpg', 'IMG_0012.jpg'],
    ['Zündkerze 3 ✓.jpg', 'Zündkerze 3 ✓.jpg'],
    ['e\u0301.jpg', '\u00e9.jpg'],
    ['gpj.\u202Eexe', 'gpj.<U+202E>exe'],
    ['\u001b]0;title\u0007.jpg', '<U+001B>]0;title<U+0007>.jpg'],
    ['a\nb.jpg', 'a<U+000A>b.jpg'],
    ['zero\u200Bwidth.jpg', 'zero<U+200B>width.jpg'],
    ['\ud800.jpg', '<U+D800>.jpg'],
    ['', 'unnamed'],
    ['   ', 'unnamed'],
    ['CON', 'CON'],
    ['a.jpg:stream', 'a.jpg:stream'],
  ])('of %j is %j', (name, shown) => {
    expect(shownName(name)).toBe(shown)
  })

  it('keeps the extension when it is cut', () => {
    const shown = shownName(`${'ü'.repeat(300)}.heic`)
    expect(shown).toMatch(/^ü+…\.heic$/)
    expect(Buffer.byteLength(shown)).toBeLessThanOrEqual(255)
  })

  it('is never empty, never over 255 bytes, holds nothing invisible, and stays as it is when shown again', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), name => {
        const shown = shownName(name)
        expect(shown.length).toBeGreaterThan(0)
        expect(Buffer.byteLength(shown)).toBeLessThanOrEqual(255)
        expect(shown).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u)
        expect(shownName(shown)).toBe(shown)
      }),
      { numRuns: 500 },
    )
  })
})
