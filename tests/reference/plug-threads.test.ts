// Thread sizes against a published ISO 724 table; the two stress areas it misprints are no part of this.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { plugThreads, threadSizes } from '../../shared/plug/thread.ts'
import { halfUnit, published } from './published.ts'

const { plug_threads: rows } = published(
  'threads',
  z.object({
    plug_threads: z.array(
      z.object({
        designation: z.enum(plugThreads),
        d_mm: z.number(),
        pitch_mm: z.number(),
        H_mm: z.number(),
        published: z.object({ d2: z.number(), d3: z.number(), D1: z.number() }),
      }),
    ),
  }),
)

describe('basic sizes of plug threads', () => {
  it('has every plug thread of the table', () => {
    expect(rows.map(row => row.designation)).toEqual([...plugThreads])
  })
  it.each(rows.map(row => [row.designation, row] as const))('%s', (thread, row) => {
    const ours = threadSizes(thread)
    expect([ours.diameter, ours.pitch]).toEqual([row.d_mm, row.pitch_mm])
    expect(Math.abs(ours.height - row.H_mm)).toBeLessThanOrEqual(halfUnit(6))
    expect(Math.abs(ours.pitchDiameter - row.published.d2)).toBeLessThanOrEqual(halfUnit(3))
    expect(Math.abs(ours.minorDiameter - row.published.D1)).toBeLessThanOrEqual(halfUnit(3))
    expect(Math.abs(ours.rootDiameter - row.published.d3)).toBeLessThanOrEqual(halfUnit(3))
  })
})
