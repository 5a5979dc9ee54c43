// Compression of one cylinder with the engine running on the others, gauge without its valve: at idle and in a snap.
import { z } from 'zod'
import { pressureSchema } from '../units/quantity.ts'

export const runningCompressionEntrySchema = z.strictObject({
  idle: pressureSchema.optional(),
  snap: pressureSchema.optional(),
  rpm: z.number().finite().min(0).max(20000).optional(),
})
export type RunningCompressionEntry = z.infer<typeof runningCompressionEntrySchema>
