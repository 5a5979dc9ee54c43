// One line of the job list: what the index keeps of a job. Rebuildable from the job itself.
import { z } from 'zod'
import { idSchema, sha256Schema, timeSchema } from '../job/common-schema.ts'

export const jobSummarySchema = z.strictObject({
  id: idSchema,
  rev: z.int().min(0),
  createdAt: timeSchema,
  updatedAt: timeSchema,
  archived: z.boolean(),
  demo: z.boolean(),
  repaired: z.boolean(),
  complaint: z.string(),
  vehicle: z.string(),
  vin: z.string(),
  technician: z.string(),
  layoutName: z.string(),
  /** Condition map in short, by cylinder in numbering order. */
  states: z.array(
    z.strictObject({ cylinder: z.int(), state: z.enum(['sound', 'watch', 'fault', 'unknown']) }),
  ),
  /** Up to four photos for the list, by SHA-256. */
  photos: z.array(sha256Schema).max(4),
})
export type JobSummary = z.infer<typeof jobSummarySchema>
