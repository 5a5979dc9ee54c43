// The proof after the repair: the tests that failed, repeated, before beside after. Without a repeat it is unverified.
import { gauges, judgeAll } from '../gauges/gauges.ts'
import { type ShownUnits, tradeUnits } from '../gauges/shown.ts'
import type { GaugeVerdict } from '../gauges/verdict.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'

const key = (one: GaugeVerdict): string => `${one.test} ${one.rule} ${one.cylinder ?? 'engine'}`
const place = (one: GaugeVerdict): string =>
  one.cylinder === undefined ? 'engine' : `cylinder ${one.cylinder}`

/** Sentences; the first says proven, not proven or unverified. */
export function proofOf(job: Job, units: ShownUnits = tradeUnits): string[] {
  if (!job.repair) return []
  const repeated = gauges.filter(({ test }) => validPulls(job, test, 'after repair').length > 0)
  const failed = judgeAll(job, 'as found', units).filter(
    one => one.verdict === 'outside' || one.verdict === 'watch',
  )
  const after = new Map(judgeAll(job, 'after repair', units).map(one => [key(one), one]))
  if (repeated.length === 0) return ['Unverified: no test was repeated after the repair.']
  const lines = failed.map(before => {
    const now = after.get(key(before))
    const found = `${before.test}, ${before.rule}, ${place(before)}: ${before.value}\u00a0${before.unit} as found`
    return now
      ? {
          met: now.verdict === 'within',
          text: `${found}, ${now.value}\u00a0${now.unit} after: ${now.verdict}.`,
        }
      : { met: false, text: `${found}; not repeated, or met so that the rule no longer speaks.` }
  })
  const still = [...after.values()].filter(one => one.verdict === 'outside')
  if (failed.length === 0)
    return [
      still.length === 0
        ? `No test had failed before; ${repeated.map(one => one.title.toLowerCase()).join(' and ')} repeated after the work, within limits.`
        : `Not proven: ${still.map(one => `${one.test}, ${one.rule}, ${place(one)}`).join('; ')} is outside after the work.`,
    ]
  const proven = lines.every(line => line.met) && still.length === 0
  return [
    proven
      ? 'Proven: every test that had failed was repeated and meets its limit.'
      : 'Not proven: not every test that had failed was repeated and met.',
    ...lines.map(line => line.text),
  ]
}
