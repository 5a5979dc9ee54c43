// One cranking of one cylinder with a compression gauge: what the technician writes down.
import { z } from 'zod'
import { pressureSchema } from '../units/quantity.ts'

export const compressionEntrySchema = z.strictObject({
  final: pressureSchema,
  /** Reading after the first compression stroke. */
  firstPuff: pressureSchema.optional(),
  /** Compression strokes counted. */
  puffs: z.int().min(1).max(60).optional(),
  /** True for the pull after oil was added. */
  wet: z.boolean().optional(),
})
export type CompressionEntry = z.infer<typeof compressionEntrySchema>
