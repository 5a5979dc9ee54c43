// Photos in the order they were taken, with and without sub-seconds, offsets and dates.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compareFileNames, inCaptureOrder } from './capture-order.ts'
import { arbitraryShot } from './testing/arbitrary-parts.ts'
import { shotNamed } from './testing/example-job.ts'
import type { Shot, TakenAt } from './tray-schema.ts'

const shot = (id: string, takenAt?: TakenAt, fileName = `${id}.jpg`): Shot => {
  const { takenAt: _, ...rest } = shotNamed(id, { fileName })
  return takenAt === undefined ? rest : { ...rest, takenAt }
}
const order = (shots: Shot[]) => inCaptureOrder(shots).map(({ id }) => id)
const local = '2026-03-02T09:14:07'

describe('capture order', () => {
  it('goes by time, then by sub-seconds as decimal fractions', () => {
    const shots = [
      shot('d', { local: '2026-03-02T09:14:08' }),
      shot('c', { local, subSec: '5' }),
      shot('b', { local, subSec: '123' }),
      shot('a', { local, subSec: '05' }),
    ]
    expect(order(shots)).toEqual(['a', 'b', 'c', 'd'])
  })

  it('uses the offsets from UTC when every dated shot has one', () => {
    const east = shot('east', { local: '2026-03-02T10:00:00', offset: '+02:00' })
    const west = shot('west', { local: '2026-03-02T05:00:00', offset: '-05:30' })
    const here = shot('here', { local: '2026-03-02T09:00:00' })
    expect(order([west, east])).toEqual(['east', 'west'])
    expect(order([west, here, east])).toEqual(['west', 'here', 'east'])
    expect(order([west, east, shot('undated')])).toEqual(['east', 'west', 'undated'])
  })

  it('goes by file name, as people count, where times tie or are missing', () => {
    expect(compareFileNames('IMG_9.jpg', 'IMG_10.jpg')).toBeLessThan(0)
    expect(compareFileNames('DSC0099.JPG', 'DSC0100.JPG')).toBeLessThan(0)
    const shots = [
      shot('x', undefined, 'IMG_10.jpg'),
      shot('y', undefined, 'IMG_9.jpg'),
      shot('b', { local }, 'IMG_12.jpg'),
      shot('a', { local }, 'IMG_2.jpg'),
    ]
    expect(order(shots)).toEqual(['a', 'b', 'y', 'x'])
  })

  it('takes a date that no calendar has for none', () => {
    const never = shot('never', { local: '0000-00-00T00:00:00' })
    const feb30 = shot('feb30', { local: '2026-02-30T10:00:00' })
    const dated = shot('z', { local })
    expect(order([never, feb30, dated])).toEqual(['z', 'feb30', 'never'])
  })

  it('drops nothing, is stable, and does not depend on the order given', () => {
    fc.assert(
      fc.property(fc.array(arbitraryShot, { maxLength: 12 }), shots => {
        const sorted = inCaptureOrder(shots)
        expect(new Set(sorted)).toEqual(new Set(shots))
        expect(inCaptureOrder(sorted)).toEqual(sorted)
        const placing = (list: Shot[]) => list.map(({ takenAt, fileName }) => [takenAt?.local, fileName])
        expect(placing(inCaptureOrder(shots.toReversed()))).toEqual(placing(sorted))
      }),
    )
  })
})
