// Tightening torques against a plug manufacturer's published chart, and torque units against worked conversions.
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import {
  type Head,
  heads,
  type Seat,
  seats,
  toNewtonMetres,
  toPoundFeet,
  torqueRange,
  torqueThreads,
} from '../../shared/plug/torque.ts'
import { halfUnit, published } from './published.ts'

const range = z.object({ lbf_ft_published: z.array(z.number()).length(2), Nm: z.array(z.number()).length(2) })
const data = published(
  'torque',
  z.object({
    chart: z.array(
      z.object({
        seat: z.string(),
        thread: z.enum(torqueThreads),
        cast_iron_head: range.nullable(),
        aluminium_head: range.nullable(),
      }),
    ),
  }),
)

const rowOf = (thread: string, seat: Seat, head: Head) => {
  const row = data.chart.find(
    one => one.thread === thread && one.seat === (seat === 'gasket' ? 'flat, gasket' : 'conical'),
  )
  return (head === 'aluminium' ? row?.aluminium_head : row?.cast_iron_head) ?? undefined
}
const cases = torqueThreads.flatMap(thread =>
  seats.flatMap(seat => heads.map(head => [thread, seat, head] as const)),
)

describe('tightening torque', () => {
  it.each(cases)('%s, %s seat, %s head', (thread, seat, head) => {
    const ours = torqueRange(thread, seat, head)
    const row = rowOf(thread, seat, head)
    expect(ours && [...ours]).toEqual(row?.lbf_ft_published)
    ours?.forEach((poundFeet, at) => {
      expect(Math.abs(toNewtonMetres(poundFeet) - (row?.Nm[at] ?? Number.NaN))).toBeLessThanOrEqual(
        halfUnit(1),
      )
    })
  })
  it('converts as worked by hand: 13 lbf ft is 17.63 N m, 18 N m is 13.28 lbf ft', () => {
    expect(toNewtonMetres(13)).toBeCloseTo(17.63, 2)
    expect(toPoundFeet(18)).toBeCloseTo(13.28, 2)
  })
})
