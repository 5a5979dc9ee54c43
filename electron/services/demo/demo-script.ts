// The form of a demonstration job in sample-images/jobs: what a technician would have typed, and which photos belong.
import { z } from 'zod'
import { circumstancesSchema, engineSchema, repairSchema } from '../../../shared/job/job-schema.ts'
import { pullSchema } from '../../../shared/job/pull-schema.ts'
import { readingDetailsSchema, readingSchema, stageSchema } from '../../../shared/job/tray-schema.ts'

const readingScript = z.strictObject({
  condition: readingSchema.shape.condition,
  details: readingDetailsSchema,
  note: z.string().optional(),
})

export const demoScriptSchema = z.strictObject({
  layout: z.string(),
  /** When the invented job took place. */
  at: z.iso.datetime({ offset: true }),
  complaint: z.string(),
  engine: engineSchema,
  circumstances: circumstancesSchema,
  trays: z
    .array(
      z.strictObject({
        name: z.string(),
        stage: stageSchema,
        /** Photo files begin with this: `<photos>-<cylinder>-<shot>.jpg`. */
        photos: z.string(),
        /** By slot: "3", or "3A" with two plugs a cylinder. */
        readings: z.record(z.string(), readingScript),
      }),
    )
    .min(1),
  /** Pulls without id and time: those are given when the job is made. */
  pulls: z.array(z.record(z.string(), z.unknown())),
  repair: repairSchema.omit({ at: true, by: true }).optional(),
  notes: z.string(),
})
export type DemoScript = z.infer<typeof demoScriptSchema>

/** Completes a scripted pull. Throws when it is not a pull. */
export const pullFromScript = (script: Record<string, unknown>, id: string, at: string) =>
  pullSchema.parse({ ...script, id, at })
