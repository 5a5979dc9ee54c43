// A job as it begins: the complaint, the engine, and one empty tray for the plugs as found.
import type { Layout } from '../engine/layout-schema.ts'
import type { RuleChoice } from '../gauges/rule-choice-schema.ts'
import { emptySlots } from './empty-slots.ts'
import type { EngineInWords, Job } from './job-schema.ts'
import { currentSchemaVersion } from './schema-version.ts'

export type JobStart = {
  id: string
  /** Id of the first tray. */
  trayId: string
  /** ISO 8601 with offset. */
  now: string
  complaint: string
  engine: EngineInWords
  layout: Layout
  technician?: string | undefined
  /** The shop's own rules. */
  rules?: RuleChoice | undefined
  /** True for an invented demonstration job. */
  demo?: boolean | undefined
}

/** Ids and time come from outside, so that the same start always gives the same job. */
export const newJob = (start: JobStart): Job => ({
  schemaVersion: currentSchemaVersion,
  id: start.id,
  createdAt: start.now,
  updatedAt: start.now,
  ...(start.demo === true && { demo: true }),
  ...(start.technician !== undefined && start.technician !== '' && { technician: start.technician }),
  complaint: start.complaint,
  engine: start.engine,
  layout: start.layout,
  circumstances: start.rules === undefined ? {} : { rules: start.rules },
  trays: [
    {
      id: start.trayId,
      name: 'As found',
      stage: 'as found',
      createdAt: start.now,
      slots: emptySlots(start.layout),
      unsorted: [],
    },
  ],
  pulls: [],
  writeUp: { shots: [] },
})
