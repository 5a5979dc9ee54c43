// The job document: one engine, one visit. Its JSON Schema is published; schemaVersion names its shape.
import { z } from 'zod'
import { layoutSchema } from '../engine/layout-schema.ts'
import { altitudeSchema, distanceSchema, pressureSchema, vacuumSchema } from '../units/quantity.ts'
import { idSchema, personSchema, sha256Schema, timeSchema } from './common-schema.ts'
import { limits } from './limits.ts'
import { pullSchema } from './pull-schema.ts'
import { currentSchemaVersion } from './schema-version.ts'
import { traySchema } from './tray-schema.ts'

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
  /** Compression from the vehicle's service information; wins over the common-practice rules. */
  compressionSpecification: z
    .strictObject({ minimum: pressureSchema.optional(), maximumSpread: pressureSchema.optional() })
    .optional(),
  engineWarm: z.boolean().optional(),
})

export const repairSchema = z.strictObject({
  done: z.string().max(4000),
  cause: z.string().max(400).optional(),
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
  notes: z.string().max(8000).optional(),
  repair: repairSchema.optional(),
  writeUp: writeUpChoicesSchema,
})

export type Job = z.infer<typeof jobSchema>
export type EngineInWords = z.infer<typeof engineSchema>
export type Circumstances = z.infer<typeof circumstancesSchema>
export type Repair = z.infer<typeof repairSchema>
export type WriteUpChoices = z.infer<typeof writeUpChoicesSchema>
