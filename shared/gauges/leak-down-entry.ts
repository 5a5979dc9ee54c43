// Air held in one cylinder at top dead centre: percent lost or, in the aviation form, what is left of the supply.
import { z } from 'zod'
import { cylinderSchema } from '../engine/layout-schema.ts'
import { lengthSchema, pressureSchema } from '../units/quantity.ts'

export const escapePaths = [
  'intake',
  'exhaust',
  'oil filler',
  'radiator',
  'next plug hole',
  'plug adapter',
  'nothing heard',
] as const
export type EscapePath = (typeof escapePaths)[number]

const common = {
  /** Where the air is heard or seen to go; may be several. */
  escapes: z.array(z.enum(escapePaths)).max(escapePaths.length).optional(),
  /** The cylinder whose plug hole blows, for "next plug hole". */
  towards: cylinderSchema.optional(),
  /** The percentage belongs to the tester: orifice diameter. */
  orifice: lengthSchema.optional(),
  engine: z.enum(['warm', 'cold']).optional(),
}

export const leakDownEntrySchema = z.discriminatedUnion('form', [
  z.strictObject({
    form: z.literal('percent'),
    percent: z.number().finite().min(0).max(100),
    /** Regulated pressure that the percentage was read at. */
    regulated: pressureSchema.optional(),
    ...common,
  }),
  /** Read on two gauges, e.g. 80 psi in, 72 held: 72/80. */
  z.strictObject({
    form: z.literal('differential'),
    supply: pressureSchema,
    held: pressureSchema,
    ...common,
  }),
])
export type LeakDownEntry = z.infer<typeof leakDownEntrySchema>
