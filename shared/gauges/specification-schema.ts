// Limits typed from the vehicle's service information. They win over every general rule.
import { z } from 'zod'
import { lengthSchema, pressureSchema, vacuumSchema } from '../units/quantity.ts'

const percent = z.number().finite().min(0).max(100)

export const specificationSchema = z.strictObject({
  compressionMinimum: pressureSchema.optional(),
  compressionMaximum: pressureSchema.optional(),
  compressionSpread: pressureSchema.optional(),
  /** Geometric ratio, e.g. 10.5. Gives a plausible cranking pressure, marked as an estimate. */
  compressionRatio: z.number().finite().min(4).max(25).optional(),
  leakDownMaximum: percent.optional(),
  idleVacuumMinimum: vacuumSchema.optional(),
  idleVacuumMaximum: vacuumSchema.optional(),
  fuelPressureMinimum: pressureSchema.optional(),
  fuelPressureMaximum: pressureSchema.optional(),
  /** Most that the rail may lose in `holdMinutes` after stopping. */
  fuelPressureFall: pressureSchema.optional(),
  holdMinutes: z.number().finite().positive().max(1440).optional(),
  plugGapMinimum: lengthSchema.optional(),
  plugGapMaximum: lengthSchema.optional(),
})
export type Specification = z.infer<typeof specificationSchema>
