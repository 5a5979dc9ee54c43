import { expect, it } from 'vitest'
import { balanceBars, compressionBars } from './bars.ts'
import { compression, cut, jobWith, onePullEach, psi } from './testing/evidence-job.ts'

const lines = (job: ReturnType<typeof jobWith>) =>
  compressionBars(job, 'as found').limits.map(({ at, label }) => [label, at])

it('draws the limits that the verdicts use, highest first', () => {
  expect(lines(jobWith({ pulls: onePullEach([160, 150]) }))).toEqual([
    ['20 psi below the highest', 140],
    ['75 % of the highest', 120],
  ])
})
it('draws a typed specification in their place', () => {
  const circumstances = { specification: { compressionMinimum: psi(130), compressionSpread: psi(15) } }
  expect(lines(jobWith({ pulls: onePullEach([160, 150]), circumstances }))).toEqual([
    ['specified spread', 145],
    ['specified minimum', 130],
  ])
})
it('draws no comparison with one cylinder, and no bar without a pull', () => {
  const job = jobWith({ pulls: [compression(3, 150)] })
  expect(lines(job)).toEqual([])
  expect(compressionBars(job, 'as found').values.map(one => one.cylinder)).toEqual([3])
})
it('puts the line of a cut-out at half the others’ middle drop', () => {
  const job = jobWith({ pulls: [cut(1, [800, 700]), cut(2, [800, 710]), cut(3, [800, 780])] })
  expect(balanceBars(job, 'as found').values.map(({ drop, limit }) => [drop, limit])).toEqual([
    [100, 27.5],
    [90, 30],
    [20, 47.5],
  ])
  expect(balanceBars(jobWith({ pulls: [cut(1, [800, 700])] }), 'as found').values[0]?.limit).toBeUndefined()
})
it('shows beside each drop its share of the others’ work', () => {
  const job = jobWith({ pulls: [cut(1, [800, 700]), cut(2, [800, 700]), cut(3, [800, 780])] })
  expect(balanceBars(job, 'as found').values.map(({ share, ownDrop }) => [share?.percent, ownDrop])).toEqual([
    [expect.closeTo(166.7, 1), 100],
    [expect.closeTo(166.7, 1), 100],
    [20, 20],
  ])
})
