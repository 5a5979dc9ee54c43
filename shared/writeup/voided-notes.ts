// Readings that were struck out: they count for nothing, and the report says that they are there.
import type { Job } from '../job/job-schema.ts'
import type { TestKind } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'

/** "Struck out, cylinder 4: misread the gauge." for each voided pull of a test. */
export const voidedNotes = (job: Job, test: TestKind, stage: Stage): string[] =>
  job.pulls.flatMap(pull =>
    pull.test === test && pull.stage === stage && pull.voided
      ? [
          `Struck out${'cylinder' in pull ? `, cylinder ${pull.cylinder}` : ''}: ${sentence(pull.voided.reason)}`,
        ]
      : [],
  )

const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`)
