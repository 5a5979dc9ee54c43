// The order in which photos were taken, from what the camera wrote and, failing that, from the file names.
import type { Shot, TakenAt } from './tray-schema.ts'

const naturally = new Intl.Collator('en', { numeric: true })

/** Compares file names as people count: IMG_9 before IMG_10. */
export const compareFileNames = (a: string, b: string): number => naturally.compare(a, b)

type Moment = { seconds: number; fraction: number }

/** Seconds of the camera's wall clock; null for a date that no calendar has, e.g. 0000-00-00 of a camera never set. */
const wallClock = (local: string): number | null => {
  const ms = Date.parse(`${local}Z`)
  return Number.isNaN(ms) || new Date(ms).toISOString().slice(0, 19) !== local ? null : ms / 1000
}

const offsetSeconds = (offset: string): number => {
  const [hours = 0, minutes = 0] = offset.slice(1).split(':').map(Number)
  return (offset.startsWith('-') ? -1 : 1) * (hours * 3600 + minutes * 60)
}

const momentOf = (takenAt: TakenAt | undefined, useOffset: boolean): Moment | null => {
  const clock = takenAt === undefined ? null : wallClock(takenAt.local)
  if (takenAt === undefined || clock === null) return null
  const shift = useOffset && takenAt.offset !== undefined ? offsetSeconds(takenAt.offset) : 0
  return { seconds: clock - shift, fraction: Number(`0.${takenAt.subSec ?? '0'}`) }
}

export type TimedShot = { shot: Shot; moment: Moment | null }

/**
 * The shots with their times on one common clock. Offsets count only when every dated shot has one: comparing
 * some pairs by offset and others without could put three photos in a circle.
 */
const timed = (shots: readonly Shot[]): TimedShot[] => {
  const useOffset = shots.every(({ takenAt }) => takenAt === undefined || takenAt.offset !== undefined)
  return shots.map(shot => ({ shot, moment: momentOf(shot.takenAt, useOffset) }))
}

const compareTimed = (a: TimedShot, b: TimedShot): number => {
  if (a.moment !== null && b.moment !== null) {
    const apart = a.moment.seconds - b.moment.seconds || a.moment.fraction - b.moment.fraction
    if (apart !== 0) return apart
  } else if (a.moment !== null || b.moment !== null) return a.moment === null ? 1 : -1
  return compareFileNames(a.shot.fileName, b.shot.fileName)
}

/** In capture order, with the time of each on a common clock; undated last, with a null moment. */
export const timedInCaptureOrder = (shots: readonly Shot[]): TimedShot[] =>
  timed(shots).toSorted(compareTimed)

/** By capture time with sub-seconds, then by file name; undated last. Shots that tie keep the order given. */
export const inCaptureOrder = (shots: readonly Shot[]): Shot[] =>
  timedInCaptureOrder(shots).map(({ shot }) => shot)
