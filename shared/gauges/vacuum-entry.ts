// One look at the vacuum gauge, at one of five states of the engine.
import { z } from 'zod'
import { vacuumSchema } from '../units/quantity.ts'

export const vacuumPhases = ['idle', '2500 rpm', 'snap', 'trailing throttle', 'cranking'] as const
/** Described by what the pointer does, so that a person picks what was seen and not a cause. */
export const needleBehaviours = [
  'steady',
  'small flicker',
  'regular drop',
  'sharp deep drop',
  'irregular drop',
  'fast vibration',
  'slow float',
  'falls away',
  'sweeps grow with speed',
  'sweeps shrink with speed',
  'steadies with speed',
  'slow return',
] as const
/** What the reading does while 2500 rpm is held. */
export const vacuumTrends = ['holds', 'rises', 'falls slowly', 'falls toward zero'] as const

export const vacuumEntrySchema = z.strictObject({
  phase: z.enum(vacuumPhases),
  /** Steady value, or the middle of the swing; for a snap the lowest point while the throttle opens. */
  reading: vacuumSchema,
  /** Lowest and highest the needle swings to; for cranking the band of its flutter. */
  range: z.strictObject({ low: vacuumSchema, high: vacuumSchema }).optional(),
  /** For a snap: the highest point as the throttle shuts. */
  rebound: vacuumSchema.optional(),
  /** For a snap: where it comes to rest again. */
  settled: vacuumSchema.optional(),
  needle: z.enum(needleBehaviours).optional(),
  trend: z.enum(vacuumTrends).optional(),
  rpm: z.number().finite().min(0).max(20000).optional(),
})
export type VacuumEntry = z.infer<typeof vacuumEntrySchema>
export type VacuumPhase = VacuumEntry['phase']
export type NeedleBehaviour = NonNullable<VacuumEntry['needle']>
