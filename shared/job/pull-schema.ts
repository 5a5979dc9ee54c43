// A pull: one gauge measurement. It is never deleted; it is voided with a reason, and can be un-voided.
import { z } from 'zod'
import { cylinderSchema } from '../engine/layout-schema.ts'
import { balanceEntrySchema } from '../gauges/balance-entry.ts'
import { compressionEntrySchema } from '../gauges/compression-entry.ts'
import { vacuumEntrySchema } from '../gauges/vacuum-entry.ts'
import { idSchema, personSchema, timeSchema } from './common-schema.ts'
import { stageSchema } from './tray-schema.ts'

export const voidedSchema = z.strictObject({
  reason: z.string().min(1).max(400),
  at: timeSchema,
  by: personSchema.optional(),
})

const common = {
  id: idSchema,
  stage: stageSchema,
  at: timeSchema,
  by: personSchema.optional(),
  note: z.string().max(400).optional(),
  voided: voidedSchema.optional(),
}

/** A new gauge adds one line here and one entry schema in shared/gauges. */
export const pullSchema = z.discriminatedUnion('test', [
  z.strictObject({
    ...common,
    test: z.literal('compression'),
    cylinder: cylinderSchema,
    entry: compressionEntrySchema,
  }),
  z.strictObject({
    ...common,
    test: z.literal('balance'),
    cylinder: cylinderSchema,
    entry: balanceEntrySchema,
  }),
  z.strictObject({ ...common, test: z.literal('vacuum'), entry: vacuumEntrySchema }),
])

export type Pull = z.infer<typeof pullSchema>
export type PullOf<T extends Pull['test']> = Extract<Pull, { test: T }>
export type TestKind = Pull['test']
export type Voided = z.infer<typeof voidedSchema>
