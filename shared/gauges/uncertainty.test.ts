// Bounds of a reading: from the tester that a pull names, or of a common gauge where it says nothing.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Instrument } from './instrument-schema.ts'
import { intervalOf, pressureBounds } from './uncertainty.ts'

const gauge = (more: Partial<Instrument>): Instrument => ({
  id: 'g1',
  kind: 'compression gauge',
  name: 'Invented',
  ...more,
})
const boundsOf = (more: Partial<Instrument>) => pressureBounds({ instruments: [gauge(more)] }, 'g1')

describe('the bounds of a reading', () => {
  it('are half a division and the class of full scale', () => {
    expect(boundsOf({ unit: 'psi', division: 2, accuracyPercent: 1.6, fullScale: 300 })).toEqual({
      read: 1,
      byClass: 4.8,
    })
  })
  it('are converted from the unit of the tester', () => {
    const { read, byClass } = boundsOf({ unit: 'bar', division: 0.2, accuracyPercent: 2.5, fullScale: 20 })
    expect(read).toBeCloseTo(1.4504, 4)
    expect(byClass).toBeCloseTo(7.2519, 4)
  })
  it('are those of a 5 psi scale where nothing is known', () => {
    const common = { read: 2.5, byClass: 0 }
    expect(pressureBounds({}, undefined)).toEqual(common)
    expect(boundsOf({ division: 2 })).toEqual(common)
    expect(boundsOf({ division: 2, unit: 'ohm' })).toEqual(common)
    expect(pressureBounds({ instruments: [gauge({ unit: 'psi', division: 2 })] }, 'another')).toEqual(common)
  })
})

it('an interval is no narrower than its widest part and no wider than all parts together', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 50, noNaN: true }), { minLength: 1, maxLength: 4 }),
      parts => {
        const interval = intervalOf(parts)
        expect(interval).toBeGreaterThanOrEqual(Math.max(...parts) - 1e-9)
        expect(interval).toBeLessThanOrEqual(parts.reduce((a, b) => a + b, 0) + 1e-9)
      },
    ),
  )
})
