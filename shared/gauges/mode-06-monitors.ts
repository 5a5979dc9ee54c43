// Which monitor and which test of service 06 speaks of which cylinder, and what the tests of the misfire monitors count.
import { hexByte } from './mode-06-lines.ts'

/** Totals of all cylinders; makers put other things here too. */
export const generalMisfire = 0xa1
const firstCylinder = 0xa2
const lastCylinder = 0xad

/** Monitors A2 to AD are cylinders 1 to 12; null for any other. SAE J1979 as restated in a maker's 2005 summary. */
export const misfireCylinder = (mid: number): number | null =>
  mid >= firstCylinder && mid <= lastCylinder ? mid - firstCylinder + 1 : null

export const averageTest = 0x0b
export const thisDriveTest = 0x0c

/** A short name of the test, with monitor and test number, that stays the same from one reading to the next. */
export function testName(mid: number, tid: number): string {
  const numbers = `${hexByte(mid)} ${hexByte(tid)}`
  if (mid !== generalMisfire && misfireCylinder(mid) === null) return `monitor ${numbers}`
  if (tid === averageTest) return `average of ten drives (${numbers})`
  if (tid === thisDriveTest) return `this drive (${numbers})`
  return `maker's test ${numbers}`
}
