// Laws of looking at a photo: the point under the pointer stays, nothing leaves the frame, 1:1 is one device pixel.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clampView, fitScale, fitView, oneToOneZoom, panBy, percentShown, placement, zoomAt } from './view.ts'

const size = fc.record({
  width: fc.integer({ min: 50, max: 8000 }),
  height: fc.integer({ min: 50, max: 8000 }),
})
const frames = fc.record({
  width: fc.integer({ min: 100, max: 2000 }),
  height: fc.integer({ min: 100, max: 2000 }),
})
const views = fc.record({
  zoom: fc.double({ min: 1, max: 30, noNaN: true }),
  x: fc.double({ min: 0, max: 1, noNaN: true }),
  y: fc.double({ min: 0, max: 1, noNaN: true }),
})

describe('view of a photo', () => {
  it('fits the whole picture at zoom 1', () => {
    fc.assert(
      fc.property(size, frames, (picture, frame) => {
        const at = placement(fitView, picture, frame)
        expect(at.left).toBeGreaterThanOrEqual(-1e-6)
        expect(at.top).toBeGreaterThanOrEqual(-1e-6)
        expect(at.left + at.width).toBeLessThanOrEqual(frame.width + 1e-6)
        expect(at.top + at.height).toBeLessThanOrEqual(frame.height + 1e-6)
      }),
    )
  })

  it('never shows past an edge that the picture could cover', () => {
    fc.assert(
      fc.property(size, frames, views, (picture, frame, view) => {
        const at = placement(clampView(view, picture, frame), picture, frame)
        const covers = at.width >= frame.width
        const reaches = at.left <= 1e-6 && at.left + at.width >= frame.width - 1e-6
        expect(covers ? reaches : true).toBe(true)
      }),
    )
  })

  it('keeps the point under the pointer when zooming in from inside the picture', () => {
    const picture = { width: 4000, height: 3000 }
    const frame = { width: 800, height: 600 }
    const at = { x: 600, y: 200 }
    const under = (view: typeof fitView) => {
      const place = placement(view, picture, frame)
      return { x: (at.x - place.left) / place.width, y: (at.y - place.top) / place.height }
    }
    const before = clampView({ zoom: 3, x: 0.5, y: 0.5 }, picture, frame)
    const after = zoomAt(before, 1.7, at, picture, frame)
    expect(under(after).x).toBeCloseTo(under(before).x, 9)
    expect(under(after).y).toBeCloseTo(under(before).y, 9)
  })

  it('goes back where it came from when panned there and back', () => {
    const picture = { width: 4000, height: 3000 }
    const frame = { width: 800, height: 600 }
    const start = { zoom: 4, x: 0.5, y: 0.5 }
    const there = panBy(start, { x: 40, y: -25 }, picture, frame)
    expect(there.x).toBeLessThan(start.x)
    const back = panBy(there, { x: -40, y: 25 }, picture, frame)
    expect(back.x).toBeCloseTo(start.x, 9)
    expect(back.y).toBeCloseTo(start.y, 9)
  })

  it.each([1, 1.5, 2])('shows 100 percent as one device pixel at pixel ratio %s', ratio => {
    const picture = { width: 4000, height: 3000 }
    const frame = { width: 800, height: 600 }
    const zoom = oneToOneZoom(picture, frame, ratio)
    expect(fitScale(picture, frame) * zoom * ratio).toBeCloseTo(1, 9)
    expect(percentShown({ ...fitView, zoom }, picture, frame, ratio)).toBe(100)
  })
})
