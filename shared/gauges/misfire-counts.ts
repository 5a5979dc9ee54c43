// Misfire counts as a scan tool shows them, cylinder beside cylinder, each occasion for itself.
import { cylindersOf } from '../engine/relations.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import type { Gauge } from './gauge.ts'
import { callCounts, countLimit, countSource, type Count } from './misfire-compare.ts'
import type { CylinderVerdict } from './verdict.ts'

type CountPull = PullOf<'misfire counts'>

/** By cylinder; a count is held against the others of the same occasion only. */
export function judgeMisfireCounts(job: Job, stage: Stage): CylinderVerdict[] {
  const here = new Set(cylindersOf(job.layout))
  const pulls = validPulls(job, 'misfire counts', stage).filter(pull => here.has(pull.cylinder))
  return [...new Set(pulls.map(occasionOf))]
    .toSorted()
    .flatMap(occasion =>
      callCounts(latestOfEach(pulls.filter(pull => occasionOf(pull) === occasion))).map(
        ({ cylinder, count, verdict, why }): CylinderVerdict => ({
          test: 'misfire counts',
          rule: occasion,
          cylinder,
          stage,
          value: count,
          unit: 'counts',
          verdict,
          limit: countLimit,
          why,
          source: countSource,
        }),
      ),
    )
    .toSorted((a, b) => a.cylinder - b.cylinder)
}

const occasionOf = ({ entry }: CountPull): string =>
  entry.during === undefined ? 'count' : `count, ${entry.during}`

/** A counter runs on: the last reading of it counts, of two at once the higher. */
const latestOfEach = (pulls: readonly CountPull[]): Count[] =>
  [...new Set(pulls.map(pull => pull.cylinder))].flatMap(cylinder => {
    const [latest] = pulls
      .filter(pull => pull.cylinder === cylinder)
      .toSorted((a, b) => (a.at > b.at ? -1 : a.at < b.at ? 1 : b.entry.count - a.entry.count))
    return latest ? [{ cylinder, count: latest.entry.count }] : []
  })

export const misfireCountsGauge: Gauge = {
  test: 'misfire counts',
  title: 'Misfire counts',
  cautions: [
    "Driving and reading are two people's work: nobody reads a screen at the wheel.",
    'Do not run a misfiring engine long: raw fuel overheats the catalyst.',
    'Engine running indoors: exhaust extraction on, clear of fan and belts.',
  ],
  steps: [
    'Read the counts before clearing anything, then drive as the complaint says: a smooth road, warm, steady throttle.',
    'Read all cylinders at the same time and say on what occasion.',
    'The counter may follow the firing order: prove once by unplugging one injector and see which counter rises.',
    'After the repair: nought on a drive like the complaint.',
  ],
  judge: judgeMisfireCounts,
}
