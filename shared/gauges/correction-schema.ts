// A correction of a misread gauge: how every number is put right. The entry as it was made stays in the pull.
import { z } from 'zod'
import { pressureUnits, vacuumUnits } from '../units/quantity.ts'

const finite = z.number().finite()

export const correctionHowSchema = z.discriminatedUnion('kind', [
  /** The scale was misread: a division was 5 and not 10, so every value times 0.5. */
  z.strictObject({ kind: z.literal('scale'), factor: finite.positive().max(100) }),
  /** The needle did not stand at zero: added to every value, in the unit it was entered in. */
  z.strictObject({ kind: z.literal('offset'), add: finite }),
  /** The number was right and the unit wrong. */
  z.strictObject({ kind: z.literal('unit'), unit: z.enum([...pressureUnits, ...vacuumUnits]) }),
  /** Takes earlier corrections back: the entry as it was made counts again. */
  z.strictObject({ kind: z.literal('as entered') }),
])
export type CorrectionHow = z.infer<typeof correctionHowSchema>
