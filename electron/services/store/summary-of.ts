// The line of the job list for a job, with its condition map in short.
import type { JobSummary } from '../../../shared/contract/summary-schema.ts'
import { conditionMap } from '../../../shared/diagnosis/condition-map.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import { currentStage } from '../../../shared/job/stage.ts'
import { summarise } from '../../../shared/job/summary.ts'

export const summaryOf = (job: Job): JobSummary => summarise(job, conditionMap(job, currentStage(job)))
