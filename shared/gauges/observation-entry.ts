// What a person noticed or was told that is not a gauge reading: when the fault comes, smoke, fluids, simple checks.
import { z } from 'zod'

export const observationKinds = [
  'fault only cold',
  'fault only hot',
  'fault at idle',
  'fault under load',
  'fault at speed',
  'fault in the wet',
  'comes and goes',
  'does not start',
  'starter turns slowly',
  'blue smoke',
  'white smoke or steam',
  'black smoke',
  'coolant level falls',
  'combustion gas in coolant',
  'cooling system loses pressure',
  'oil level falls',
  'oil milky',
  'oil in intake or breather',
  'knock heard',
  'ticking at the valves',
  'hiss at the intake',
  'exhaust blows',
  'fuel smell',
  'long idling or short trips',
  'fuel with metallic additive',
  'runs on gas fuel',
  'plugs new',
  'plugs other than specified',
  'plug found loose',
  'engine overheated lately',
  'repair just before the fault',
] as const
export type ObservationKind = (typeof observationKinds)[number]

export const observationEntrySchema = z.strictObject({
  seen: z.enum(observationKinds),
  /** Looked for and not so: no. */
  answer: z.enum(['yes', 'no']),
})
export type ObservationEntry = z.infer<typeof observationEntrySchema>
