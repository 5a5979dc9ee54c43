// A pull: one gauge measurement. It is never deleted: it is voided with a reason, or corrected with the entry kept.
import { z } from 'zod'
import { cylinderSchema } from '../engine/layout-schema.ts'
import { balanceEntrySchema } from '../gauges/balance-entry.ts'
import { compressionEntrySchema } from '../gauges/compression-entry.ts'
import { correctionHowSchema } from '../gauges/correction-schema.ts'
import {
  fuelPressureEntrySchema,
  injectorBalanceEntrySchema,
  injectorEntrySchema,
  trimsEntrySchema,
} from '../gauges/fuel-entries.ts'
import { resistanceEntrySchema, sparkEntrySchema } from '../gauges/ignition-entries.ts'
import { leakDownEntrySchema } from '../gauges/leak-down-entry.ts'
import { observationEntrySchema } from '../gauges/observation-entry.ts'
import { recordingEntrySchema } from '../gauges/recording-entry.ts'
import { runningCompressionEntrySchema } from '../gauges/running-compression-entry.ts'
import {
  misfireCountEntrySchema,
  mode06EntrySchema,
  troubleCodesEntrySchema,
} from '../gauges/scan-entries.ts'
import { swapEntrySchema } from '../gauges/swap-entry.ts'
import { vacuumEntrySchema } from '../gauges/vacuum-entry.ts'
import { idSchema, personSchema, timeSchema } from './common-schema.ts'
import { limits } from './limits.ts'
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
  /** One of the job's instruments. */
  instrument: idSchema.optional(),
  voided: voidedSchema.optional(),
}

/** The last correction counts; each keeps who, when, why and the entry it leads to. */
const correctionOf = <Entry extends z.ZodType>(entry: Entry) =>
  z.strictObject({
    how: correctionHowSchema,
    reason: z.string().min(1).max(400),
    at: timeSchema,
    by: personSchema.optional(),
    entry,
  })

const ofCylinder = <Test extends string, Entry extends z.ZodType>(test: Test, entry: Entry) =>
  z.strictObject({
    ...common,
    test: z.literal(test),
    cylinder: cylinderSchema,
    entry,
    corrections: z.array(correctionOf(entry)).max(limits.correctionsPerPull).optional(),
  })

const ofEngine = <Test extends string, Entry extends z.ZodType>(test: Test, entry: Entry) =>
  z.strictObject({
    ...common,
    test: z.literal(test),
    entry,
    corrections: z.array(correctionOf(entry)).max(limits.correctionsPerPull).optional(),
  })

/** In the order a page lists them. */
export const testKinds = [
  'vacuum',
  'balance',
  'relative compression',
  'compression',
  'running compression',
  'leak-down',
  'spark',
  'resistance',
  'fuel pressure',
  'injector balance',
  'injector',
  'trims',
  'misfire counts',
  'trouble codes',
  'mode 06',
  'crank speed',
  'swap',
  'observation',
] as const satisfies readonly Pull['test'][]

/** A new gauge adds one line here and one entry schema in shared/gauges. */
export const pullSchema = z.discriminatedUnion('test', [
  ofCylinder('compression', compressionEntrySchema),
  ofCylinder('running compression', runningCompressionEntrySchema),
  ofCylinder('leak-down', leakDownEntrySchema),
  ofCylinder('balance', balanceEntrySchema),
  ofEngine('vacuum', vacuumEntrySchema),
  ofCylinder('spark', sparkEntrySchema),
  ofCylinder('resistance', resistanceEntrySchema),
  ofEngine('fuel pressure', fuelPressureEntrySchema),
  ofCylinder('injector balance', injectorBalanceEntrySchema),
  ofCylinder('injector', injectorEntrySchema),
  ofEngine('trims', trimsEntrySchema),
  ofCylinder('misfire counts', misfireCountEntrySchema),
  ofEngine('trouble codes', troubleCodesEntrySchema),
  ofEngine('mode 06', mode06EntrySchema),
  ofEngine('swap', swapEntrySchema),
  ofEngine('relative compression', recordingEntrySchema),
  ofEngine('crank speed', recordingEntrySchema),
  ofEngine('observation', observationEntrySchema),
])

export type Pull = z.infer<typeof pullSchema>
export type PullOf<T extends Pull['test']> = Extract<Pull, { test: T }>
export type TestKind = Pull['test']
export type Voided = z.infer<typeof voidedSchema>
