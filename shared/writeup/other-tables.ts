// Every test beyond compression, balance and vacuum as one plain table each: what was found, and what it was held against.
import type { UnitChoice } from '../contract/settings-schema.ts'
import { valueWords } from '../diagnosis/gauge-evidence.ts'
import { gauges } from '../gauges/gauges.ts'
import { pullWords } from '../job/command-label.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { TestKind } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { limitNotes, none } from './verdict-words.ts'
import { voidedNotes } from './voided-notes.ts'
import type { WriteUpTable } from './write-up.ts'

const withTablesOfTheirOwn: ReadonlySet<TestKind> = new Set(['compression', 'balance', 'vacuum'])

/** A table for each of them that was done; a reading that no rule speaks of stands as it was entered. */
export function otherTables(job: Job, stage: Stage, units: UnitChoice): WriteUpTable[] {
  return gauges
    .filter(({ test }) => !withTablesOfTheirOwn.has(test))
    .flatMap(({ test, title, judge }) => {
      const pulls = validPulls(job, test, stage)
      if (pulls.length === 0) return []
      const verdicts = judge(job, stage, units)
      const rows =
        verdicts.length > 0
          ? verdicts.map(one => [
              one.cylinder === undefined ? 'engine' : `cylinder ${one.cylinder}`,
              one.rule,
              valueWords(one),
              `${one.verdict}. ${one.why}`,
            ])
          : pulls.map(pull => [
              'cylinder' in pull ? `cylinder ${pull.cylinder}` : 'engine',
              pullWords(pull),
              none,
              'noted',
            ])
      return [
        {
          title: `${title}, ${stage}`,
          columns: ['Where', 'Rule', 'Value', 'Verdict'],
          rows,
          notes: [...limitNotes(verdicts), ...voidedNotes(job, test, stage)],
        },
      ]
    })
}
