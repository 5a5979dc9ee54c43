// What was noticed or told: noted, never judged. Of yes and no to the same question the later counts.
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import type { Gauge } from './gauge.ts'
import { observationWords } from './observation-words.ts'
import type { GaugeVerdict } from './verdict.ts'

/** One for each thing looked for, by its name. */
export function judgeObservations(job: Job, stage: Stage): GaugeVerdict[] {
  const pulls = validPulls(job, 'observation', stage)
  const kinds = [...new Set(pulls.map(pull => pull.entry.seen))].toSorted()
  return kinds.flatMap(seen => {
    const of = pulls
      .filter(pull => pull.entry.seen === seen)
      .toSorted((a, b) => (a.at === b.at ? (a.entry.answer < b.entry.answer ? 1 : -1) : a.at > b.at ? -1 : 1))
    const [latest] = of
    if (latest === undefined) return []
    const changed = of.some(pull => pull.entry.answer !== latest.entry.answer)
    return [
      {
        test: 'observation',
        rule: observationWords[seen],
        stage,
        value: of.length,
        unit: of.length === 1 ? 'note' : 'notes',
        verdict: 'noted',
        limit: 'an observation is not judged',
        why: `${latest.entry.answer === 'yes' ? 'Yes.' : 'Looked for, and not so.'}${
          changed ? ' It was answered otherwise before; the later answer counts.' : ''
        }`,
        source: 'seen or told, not measured',
      },
    ]
  })
}

export const observationGauge: Gauge = {
  test: 'observation',
  title: 'Observations',
  cautions: [
    'Never open a hot or pressurised cooling system.',
    'Exhaust gas kills: run engines with extraction. Clear of fan, belts and hot exhaust while listening.',
    'Fuel smelt is fuel leaking: stop the engine, no flame or spark, ventilate, find it first.',
  ],
  steps: [
    'Ask when the fault comes: cold or hot, idle or load, in the wet; and what was done to the car just before.',
    'Look and smell before measuring: smoke, levels, oil filler, breather, plugs as fitted.',
    'Write down what was looked for and not so as well: a no narrows the causes too.',
  ],
  judge: judgeObservations,
}
