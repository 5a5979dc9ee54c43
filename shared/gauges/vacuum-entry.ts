// One look at the vacuum gauge, at one of four states of the engine.
import { z } from 'zod'
import { vacuumSchema } from '../units/quantity.ts'

export const vacuumPhases = ['idle', '2500 rpm', 'snap', 'cranking'] as const
export const needleBehaviours = [
  'steady',
  'regular drop',
  'irregular drop',
  'fast vibration',
  'slow float',
  'falls away',
] as const

export const vacuumEntrySchema = z.strictObject({
  phase: z.enum(vacuumPhases),
  /** Steady value; for a snap the lowest point while the throttle opens. */
  reading: vacuumSchema,
  /** For a snap: the highest point as the throttle shuts. */
  rebound: vacuumSchema.optional(),
  needle: z.enum(needleBehaviours).optional(),
})
export type VacuumEntry = z.infer<typeof vacuumEntrySchema>
export type VacuumPhase = VacuumEntry['phase']
export type NeedleBehaviour = NonNullable<VacuumEntry['needle']>
