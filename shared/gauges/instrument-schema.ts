// The tester a pull was made with: what it can resolve, how true it is, and what belongs to its readings.
import { z } from 'zod'
import { idSchema } from '../job/common-schema.ts'
import { lengthSchema } from '../units/quantity.ts'

export const instrumentKinds = [
  'compression gauge',
  'vacuum gauge',
  'leak-down tester',
  'fuel pressure gauge',
  'spark tester',
  'ohmmeter',
  'scan tool',
  'current clamp',
] as const

export const instrumentSchema = z.strictObject({
  id: idSchema,
  kind: z.enum(instrumentKinds),
  name: z.string().min(1).max(80),
  /** One scale division, in `unit`. */
  division: z.number().finite().positive().optional(),
  unit: z.string().min(1).max(12).optional(),
  /** Accuracy class: largest error in percent of full scale (e.g. 1.6 for class 1.6), and that full scale in `unit`. */
  accuracyPercent: z.number().finite().positive().max(50).optional(),
  fullScale: z.number().finite().positive().optional(),
  /** Compression gauge: volume of the hose beyond the valve, in millilitres; it lowers the first puff by itself. */
  hoseMillilitres: z.number().finite().min(0).max(500).optional(),
  /** Leak-down tester. */
  orifice: lengthSchema.optional(),
})
export type Instrument = z.infer<typeof instrumentSchema>
