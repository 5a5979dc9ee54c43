// Which stage of a job its condition map speaks of by default: after the repair once anything of that was recorded.
import type { Job } from './job-schema.ts'
import type { Stage } from './tray-schema.ts'

/** Both stages, for pages that may not load the schema. */
export const stagesInOrder: readonly Stage[] = ['as found', 'after repair']

const hasAfterRepair = (job: Job): boolean =>
  job.pulls.some(pull => pull.stage === 'after repair' && pull.voided === undefined) ||
  job.trays.some(
    tray =>
      tray.stage === 'after repair' &&
      tray.slots.some(slot => slot.shots.length > 0 || slot.reading !== undefined),
  )

/** The stages that have a tray or a pull, in the order of the story. */
export const stagesOf = (job: Job): Stage[] =>
  hasAfterRepair(job) || job.trays.some(tray => tray.stage === 'after repair')
    ? ['as found', 'after repair']
    : ['as found']

export const currentStage = (job: Job): Stage => (hasAfterRepair(job) ? 'after repair' : 'as found')
