// One cut-out of one cylinder: engine speed and vacuum before, after, and once it works again.
import { z } from 'zod'
import { vacuumSchema } from '../units/quantity.ts'

const rpm = z.number().finite().min(0).max(20000)

export const cutMethods = ['injector', 'command function', 'grounded probe'] as const

export const balanceEntrySchema = z.strictObject({
  rpmBefore: rpm,
  rpmAfter: rpm,
  /** Speed after the cylinder was let in again: shows drift of the baseline. */
  rpmRestored: rpm.optional(),
  vacuumBefore: vacuumSchema.optional(),
  vacuumAfter: vacuumSchema.optional(),
  cut: z.enum(cutMethods).optional(),
})
export type BalanceEntry = z.infer<typeof balanceEntrySchema>
