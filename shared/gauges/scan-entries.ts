// What the vehicle's own monitor says: misfire counts, trouble codes, and raw answers of service 06.
import { z } from 'zod'

export const misfireOccasions = ['this drive', 'average of ten drives', 'idle', 'under load', 'cold'] as const

export const misfireCountEntrySchema = z.strictObject({
  count: z.int().min(0).max(65535),
  during: z.enum(misfireOccasions).optional(),
})
export type MisfireCountEntry = z.infer<typeof misfireCountEntrySchema>

export const codeStates = ['stored', 'pending', 'permanent'] as const

export const troubleCodesEntrySchema = z.strictObject({
  codes: z
    .array(
      z.strictObject({
        code: z.string().regex(/^[PCBU][0-9A-F]{4}$/),
        state: z.enum(codeStates).optional(),
      }),
    )
    .max(64),
})
export type TroubleCodesEntry = z.infer<typeof troubleCodesEntrySchema>

/** As pasted: CAN frames or payloads, one a line, with or without header. Decoded when read, never stored decoded. */
export const mode06EntrySchema = z.strictObject({ hex: z.string().min(1).max(20000) })
export type Mode06Entry = z.infer<typeof mode06EntrySchema>
