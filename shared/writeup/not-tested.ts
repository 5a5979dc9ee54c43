// What was not done: tests left out, cylinders passed over, plugs not read, failed tests not repeated.
import { cylindersOf } from '../engine/relations.ts'
import { plugReadings } from '../diagnosis/plug-evidence.ts'
import { gauges } from '../gauges/gauges.ts'
import { inWords } from '../gauges/shown.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { TestKind } from '../job/pull-schema.ts'
import { stagesOf } from '../job/stage.ts'

/** The tests made on any rough-running engine; of the others only what was begun is spoken of. */
const firstTests: ReadonlySet<TestKind> = new Set(['vacuum', 'balance', 'compression'])

/** Short phrases without a full stop. */
export function notTested(job: Job): string[] {
  return [
    ...gauges
      .filter(({ test }) => firstTests.has(test))
      .flatMap(({ test, title }) => untested(job, test, title)),
    ...unread(job),
    ...notRepeated(job),
  ]
}

type Gauge = (typeof gauges)[number]

function untested(job: Job, test: Gauge['test'], title: string): string[] {
  if (stagesOf(job).every(stage => validPulls(job, test, stage).length === 0)) return [title]
  const done = new Set(
    stagesOf(job).flatMap(stage =>
      validPulls(job, test, stage).flatMap(pull => ('cylinder' in pull ? [pull.cylinder] : [])),
    ),
  )
  if (done.size === 0) return []
  const left = cylindersOf(job.layout)
    .filter(cylinder => !done.has(cylinder))
    .toSorted((a, b) => a - b)
  return left.length > 0 ? [`${title} of cylinder ${inWords(left)}`] : []
}

function unread(job: Job): string[] {
  const read = new Set(stagesOf(job).flatMap(stage => plugReadings(job, stage).map(one => one.slot.cylinder)))
  const left = cylindersOf(job.layout)
    .filter(cylinder => !read.has(cylinder))
    .toSorted((a, b) => a - b)
  if (left.length === 0) return []
  return read.size === 0 ? ['Plugs not read'] : [`Plug of cylinder ${inWords(left)} not read`]
}

function notRepeated(job: Job): string[] {
  if (!job.repair) return []
  return gauges
    .filter(
      ({ test, judge }) =>
        validPulls(job, test, 'as found').length > 0 &&
        validPulls(job, test, 'after repair').length === 0 &&
        (firstTests.has(test) || judge(job, 'as found').some(one => one.verdict === 'outside')),
    )
    .map(({ title }) => `${title} not repeated after the repair`)
}
