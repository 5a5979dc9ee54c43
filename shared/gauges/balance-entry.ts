// One cut-out of one cylinder: engine speed and vacuum before and after.
import { z } from 'zod'
import { vacuumSchema } from '../units/quantity.ts'

const rpm = z.number().finite().min(0).max(20000)

export const balanceEntrySchema = z.strictObject({
  rpmBefore: rpm,
  rpmAfter: rpm,
  vacuumBefore: vacuumSchema.optional(),
  vacuumAfter: vacuumSchema.optional(),
})
export type BalanceEntry = z.infer<typeof balanceEntrySchema>
