// Results read from a recording: relative compression from starter current, and work of each cylinder from crank speed.
import { z } from 'zod'
import { cylinderSchema } from '../engine/layout-schema.ts'
import { sha256Schema } from '../job/common-schema.ts'

const percent = z.number().finite().min(-1000).max(1000)

/** Where the numbers come from, so that they can be worked out again. */
const recordingSourceSchema = z.strictObject({
  fileName: z.string().min(1).max(255),
  /** The recording's bytes in the store. */
  recording: sha256Schema,
  seconds: z.number().finite().min(0),
  samples: z.int().min(0),
  /** How the columns were read, for reading them again. */
  mapping: z.record(z.string(), z.union([z.string(), z.number(), z.boolean()])),
  method: z.string().min(1).max(80),
})

const valueSchema = z.strictObject({
  /** Place in the firing sequence from the first event found, from 1. */
  position: z.int().min(1).max(32),
  /** Known only where a sync signal names it. */
  cylinder: cylinderSchema.optional(),
  percent,
  plusMinus: z.number().finite().min(0).optional(),
})

export const recordingEntrySchema = z.strictObject({
  source: recordingSourceSchema,
  synced: z.boolean(),
  /** Starter current: compression relative to the best. Crank speed: share of the mean contribution. */
  values: z.array(valueSchema).min(1).max(32),
  cycles: z.int().min(0).optional(),
  rpm: z.number().finite().min(0).optional(),
  remarks: z.array(z.string().max(300)).max(20),
})
export type RecordingEntry = z.infer<typeof recordingEntrySchema>
