// Relative compression and crank speed as gauges: every value of the newest recording that counts, as a verdict.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { lowestOne } from '../recordings/lowest.ts'
import { recordingGuides } from '../recordings/recording-guide.ts'
import type { Gauge } from './gauge.ts'
import { round } from './shown.ts'
import { sources } from './sources.ts'
import type { GaugeVerdict } from './verdict.ts'

type RecordedTest = keyof typeof recordingGuides

/**
 * One verdict a value: "watch" for the lowest where it stands clear of the next by both intervals, else "noted". A
 * recording compares cylinders with each other and has no limit of its own, so none is ever "outside".
 */
const judgeRecording =
  (test: RecordedTest) =>
  (job: Job, stage: Stage): GaugeVerdict[] => {
    const entry = validPulls(job, test, stage).at(-1)?.entry
    if (!entry) return []
    const { percentOf } = recordingGuides[test]
    const positions = entry.values.map(({ position, cylinder, percent, plusMinus }) => ({
      position,
      cylinder: cylinder ?? null,
      percent,
      ...(plusMinus === undefined ? {} : { plusMinus }),
    }))
    const lowest = lowestOne(positions)
    return entry.values.map(({ position, cylinder, percent, plusMinus }) => {
      const isLow = lowest?.position === position
      return {
        test,
        rule: cylinder === undefined ? `${test}, position ${position}` : test,
        ...(cylinder === undefined ? {} : { cylinder }),
        stage,
        value: round(percent, 0),
        ...(plusMinus === undefined ? {} : { plusMinus: round(plusMinus, 0) }),
        unit: `% ${percentOf}`,
        verdict: isLow ? ('watch' as const) : ('noted' as const),
        limit: 'none of its own: cylinders are compared with each other',
        why: `${isLow ? 'Clearly lower than every other one. ' : ''}${
          cylinder === undefined
            ? `Position ${position} in firing order from the first event; no sync signal names the cylinder.`
            : `From ${entry.source.fileName}.`
        }${isLow ? ' Confirm it with a gauge in the cylinder.' : ''}`,
        source: sources.practice,
      }
    })
  }

const gaugeOf = (test: RecordedTest): Gauge => {
  const { title, cautions, steps } = recordingGuides[test]
  return { test, title, cautions, steps, judge: judgeRecording(test) }
}

export const relativeCompressionGauge = gaugeOf('relative compression')
export const crankSpeedGauge = gaugeOf('crank speed')
