// Fuel checks: rail pressure and how it holds, each injector's drop and pulse, fuel trims of a bank.
import { z } from 'zod'
import { pressureSchema } from '../units/quantity.ts'

export const fuelStates = ['key on', 'idle', '2500 rpm', 'load', 'after stopping'] as const

export const fuelPressureEntrySchema = z.strictObject({
  state: z.enum(fuelStates),
  pressure: pressureSchema,
  /** For "after stopping": minutes since the pump stopped. */
  minutes: z.number().finite().min(0).max(1440).optional(),
})
export type FuelPressureEntry = z.infer<typeof fuelPressureEntrySchema>

/** One injector pulsed for a fixed time: rail pressure before and after. */
export const injectorBalanceEntrySchema = z.strictObject({ before: pressureSchema, after: pressureSchema })
export type InjectorBalanceEntry = z.infer<typeof injectorBalanceEntrySchema>

export const clickKinds = ['clear', 'faint', 'none'] as const

/** What is heard at the injector and seen on a test lamp at its plug. */
export const injectorEntrySchema = z.strictObject({
  click: z.enum(clickKinds).optional(),
  pulse: z.boolean().optional(),
  ohms: z.number().finite().min(0).max(1e6).optional(),
})
export type InjectorEntry = z.infer<typeof injectorEntrySchema>

export const trimStates = ['idle', '2500 rpm', 'load'] as const

export const trimsEntrySchema = z.strictObject({
  /** Number of the bank as the scan tool shows it: 1 is the bank of cylinder 1. */
  bank: z.int().min(1).max(4),
  state: z.enum(trimStates),
  /** Percent, positive when fuel is added. */
  shortTerm: z.number().finite().min(-100).max(100).optional(),
  longTerm: z.number().finite().min(-100).max(100).optional(),
  /** Trims mean something only in closed loop. */
  closedLoop: z.boolean().optional(),
})
export type TrimsEntry = z.infer<typeof trimsEntrySchema>
