// The job document: one engine, one visit. Its JSON Schema is published; schemaVersion names its shape.
import { z } from 'zod'
import { cylinderSchema, layoutSchema } from '../engine/layout-schema.ts'
import { testConditionsSchema } from '../gauges/conditions-schema.ts'
import { instrumentSchema } from '../gauges/instrument-schema.ts'
import { ruleChoiceSchema } from '../gauges/rule-choice-schema.ts'
import { specificationSchema } from '../gauges/specification-schema.ts'
import { altitudeSchema, distanceSchema, vacuumSchema } from '../units/quantity.ts'
import { idSchema, personSchema, sha256Schema, timeSchema } from './common-schema.ts'
import { limits } from './limits.ts'
import { pullSchema, testKinds } from './pull-schema.ts'
import { currentSchemaVersion } from './schema-version.ts'
import { stageSchema, traySchema } from './tray-schema.ts'

export { currentSchemaVersion }

export const engineSchema = z.strictObject({
  /** The vehicle, boat or machine in the technician's words. */
  vehicle: z.string().max(200),
  vin: z.string().max(40).optional(),
  odometer: distanceSchema.optional(),
})

/** What the readings depend on, noted once a job. */
export const circumstancesSchema = z.strictObject({
  altitude: altitudeSchema.optional(),
  /** Local atmospheric pressure, not reduced to sea level. Wins over altitude. */
  barometer: vacuumSchema.optional(),
  /** Limits from the vehicle's service information; they win over the general rules. */
  specification: specificationSchema.optional(),
  /** The general rules that this job is judged by, where the shop chose; the defaults of rule-sets.ts otherwise. */
  rules: ruleChoiceSchema.optional(),
  engineWarm: z.boolean().optional(),
})

/** How one test was set up at one stage. */
export const setUpSchema = z.strictObject({
  test: z.enum(testKinds),
  stage: stageSchema,
  conditions: testConditionsSchema,
})

/** A cause that the repair proved: its id in the diagnosis, and where. */
export const confirmedCauseSchema = z.strictObject({
  cause: z.string().min(1).max(80),
  cylinder: cylinderSchema.optional(),
})

export const repairSchema = z.strictObject({
  done: z.string().max(4000),
  cause: z.string().max(400).optional(),
  /** Empty or left out until somebody confirms what it was. */
  confirmed: z.array(confirmedCauseSchema).max(20).optional(),
  at: timeSchema,
  by: personSchema.optional(),
})

export const writeUpChoicesSchema = z.strictObject({
  /** Shots to print, by shot id, in order. Empty: the write-up chooses. */
  shots: z.array(idSchema).max(limits.shotsInWriteUp),
  noteForShop: z.string().max(4000).optional(),
  noteForCustomer: z.string().max(4000).optional(),
})

export const jobSchema = z.strictObject({
  schemaVersion: z.literal(currentSchemaVersion),
  id: idSchema,
  /** Rises by one with each stored change. People and scripts may leave it and the hash out. */
  rev: z.int().min(0).optional(),
  /** SHA-256 over the canonical JSON of the document without this field. */
  hash: sha256Schema.optional(),
  createdAt: timeSchema,
  updatedAt: timeSchema,
  /** Invented demonstration job. */
  demo: z.boolean().optional(),
  archivedAt: timeSchema.optional(),
  technician: personSchema.optional(),
  complaint: z.string().max(4000),
  engine: engineSchema,
  layout: layoutSchema,
  circumstances: circumstancesSchema,
  trays: z.array(traySchema).min(1).max(limits.traysPerJob),
  pulls: z.array(pullSchema).max(limits.pullsPerJob),
  /** The testers that the pulls name. */
  instruments: z.array(instrumentSchema).max(limits.instrumentsPerJob).optional(),
  /** At most one a test and stage. */
  setUps: z.array(setUpSchema).max(60).optional(),
  notes: z.string().max(8000).optional(),
  repair: repairSchema.optional(),
  writeUp: writeUpChoicesSchema,
})

export type Job = z.infer<typeof jobSchema>
export type EngineInWords = z.infer<typeof engineSchema>
export type Circumstances = z.infer<typeof circumstancesSchema>
export type SetUp = z.infer<typeof setUpSchema>
export type ConfirmedCause = z.infer<typeof confirmedCauseSchema>
export type Repair = z.infer<typeof repairSchema>
export type WriteUpChoices = z.infer<typeof writeUpChoicesSchema>
