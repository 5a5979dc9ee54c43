// The weighted average of misfires that service 06 keeps over driving cycles, and how long it remembers.

const share = 0.1

/** 0.1 x this cycle + 0.9 x the average before, from nought. Maker's 2005 summary and 2012 service page. */
export const nextAverage = (average: number, current: number): number =>
  share * current + (1 - share) * average

/** Cycles without a misfire until the average is below a half and shows as nought. */
export function cleanCycles(average: number): number {
  let left = average
  let cycles = 0
  while (left >= 0.5) {
    left = nextAverage(left, 0)
    cycles++
  }
  return cycles
}
