// The pulls of one test at one stage, voided ones too: all that ever stood there stays in sight.
import type { Job } from '../../../../shared/job/job-schema.ts'
import type { Pull, TestKind } from '../../../../shared/job/pull-schema.ts'
import type { Stage } from '../../../../shared/job/tray-schema.ts'

export const pullsAt = (job: Job, test: TestKind, stage: Stage): Pull[] =>
  job.pulls.filter(pull => pull.test === test && pull.stage === stage)

export const pullsOn = (job: Job, test: TestKind, stage: Stage, cylinder: number): Pull[] =>
  pullsAt(job, test, stage).filter(pull => 'cylinder' in pull && pull.cylinder === cylinder)
