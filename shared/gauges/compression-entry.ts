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
  /** Oil put in for a wet pull, in millilitres. */
  oilMillilitres: z.number().finite().min(0).max(200).optional(),
  /** False when the gauge fell back after cranking stopped: its valve leaks. */
  held: z.boolean().optional(),
  /** Battery voltage and speed while this cylinder was cranked. */
  batteryVolts: z.number().finite().min(0).max(60).optional(),
  crankingRpm: z.number().finite().min(0).max(1000).optional(),
})
export type CompressionEntry = z.infer<typeof compressionEntrySchema>
