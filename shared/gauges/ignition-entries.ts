// Ignition checks of one cylinder: the spark at a tester, and resistances of lead, coil and plug.
import { z } from 'zod'
import { lengthSchema } from '../units/quantity.ts'

export const sparkKinds = ['strong', 'weak', 'intermittent', 'none'] as const
export const trackPlaces = [
  'none seen',
  'boot',
  'plug insulator',
  'lead',
  'coil',
  'distributor cap or rotor',
] as const

export const sparkEntrySchema = z.strictObject({
  spark: z.enum(sparkKinds),
  /** The tester's gap, or the voltage it asks for. */
  gap: lengthSchema.optional(),
  kilovolts: z.number().finite().min(0).max(100).optional(),
  /** Where the spark runs off instead of jumping the gap. */
  tracks: z.enum(trackPlaces).optional(),
})
export type SparkEntry = z.infer<typeof sparkEntrySchema>

export const resistanceParts = ['lead', 'coil primary', 'coil secondary', 'plug', 'plug insulation'] as const

export const resistanceEntrySchema = z.strictObject({
  part: z.enum(resistanceParts),
  /** Ohms; left out for an open circuit. */
  ohms: z.number().finite().min(0).max(1e12).optional(),
  open: z.boolean().optional(),
  /** Length of a lead, for resistance per length. */
  length: lengthSchema.optional(),
  /** From the vehicle's service information, in ohms. */
  specified: z
    .strictObject({ minimum: z.number().finite().min(0), maximum: z.number().finite().min(0) })
    .optional(),
})
export type ResistanceEntry = z.infer<typeof resistanceEntrySchema>
