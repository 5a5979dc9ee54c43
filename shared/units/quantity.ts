// A number with the unit it was entered in. What was typed is what is stored; every other unit is a view.
import { z } from 'zod'

export const pressureUnits = ['psi', 'kPa', 'bar'] as const
export const vacuumUnits = ['inHg', 'kPa'] as const
export const lengthUnits = ['mm', 'in'] as const
export const temperatureUnits = ['°C', '°F'] as const
export const altitudeUnits = ['m', 'ft'] as const
export const distanceUnits = ['km', 'mi', 'h'] as const

const finite = z.number().finite()

export const pressureSchema = z.strictObject({ value: finite, unit: z.enum(pressureUnits) })
export const vacuumSchema = z.strictObject({ value: finite, unit: z.enum(vacuumUnits) })
export const lengthSchema = z.strictObject({ value: finite, unit: z.enum(lengthUnits) })
export const temperatureSchema = z.strictObject({ value: finite, unit: z.enum(temperatureUnits) })
export const altitudeSchema = z.strictObject({ value: finite, unit: z.enum(altitudeUnits) })
/** Odometer, or running hours of a stationary or marine engine. */
export const distanceSchema = z.strictObject({ value: finite.min(0), unit: z.enum(distanceUnits) })

export type Pressure = z.infer<typeof pressureSchema>
export type Vacuum = z.infer<typeof vacuumSchema>
export type Length = z.infer<typeof lengthSchema>
export type Temperature = z.infer<typeof temperatureSchema>
export type Altitude = z.infer<typeof altitudeSchema>
export type Distance = z.infer<typeof distanceSchema>
