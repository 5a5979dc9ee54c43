// What a person can set. Applies at once, kept in the catalogue.
import { z } from 'zod'
import { ruleChoiceSchema } from '../gauges/rule-choice-schema.ts'
import {
  altitudeUnits,
  distanceUnits,
  lengthUnits,
  pressureUnits,
  temperatureUnits,
  vacuumUnits,
} from '../units/quantity.ts'

export const settingsSchema = z.strictObject({
  theme: z.enum(['system', 'light', 'dark']),
  units: z.strictObject({
    pressure: z.enum(pressureUnits),
    vacuum: z.enum(vacuumUnits),
    length: z.enum(lengthUnits),
    temperature: z.enum(temperatureUnits),
    altitude: z.enum(altitudeUnits),
    distance: z.enum(distanceUnits),
  }),
  technician: z.string().max(80),
  shop: z.string().max(120),
  /** After a tag, go on to the next plug. */
  autoAdvance: z.boolean(),
  paper: z.enum(['Letter', 'A4']),
  /** The shop's own among the published limits; new jobs are judged by them. */
  rules: ruleChoiceSchema.optional(),
})
export type Settings = z.infer<typeof settingsSchema>
export type UnitChoice = Settings['units']

export const defaultSettings: Settings = {
  theme: 'system',
  units: { pressure: 'psi', vacuum: 'inHg', length: 'mm', temperature: '°C', altitude: 'ft', distance: 'km' },
  technician: '',
  shop: '',
  autoAdvance: true,
  paper: 'Letter',
}
