// A tray: the plugs of one removal, laid out by cylinder, with their shots and readings.
import { z } from 'zod'
import { cylinderSchema } from '../engine/layout-schema.ts'
import {
  conditions,
  depositKinds,
  depositPlaces,
  electrodeWearLevels,
  insulatorColours,
  insulatorDamageKinds,
  shotKinds,
  wetnessLevels,
} from '../plug/condition.ts'
import { lengthSchema } from '../units/quantity.ts'
import { idSchema, personSchema, sha256Schema, timeSchema } from './common-schema.ts'
import { limits } from './limits.ts'

/** Capture time as the camera wrote it: local time, with sub-seconds and offset only if the camera gave them. */
export const takenAtSchema = z.strictObject({
  local: z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}$/),
  subSec: z
    .string()
    .regex(/^\d{1,9}$/)
    .optional(),
  offset: z
    .string()
    .regex(/^[+-]\d{2}:\d{2}$/)
    .optional(),
})

export const photoFormats = ['jpeg', 'png', 'webp', 'tiff', 'avif', 'heic'] as const

export const shotSchema = z.strictObject({
  id: idSchema,
  /** SHA-256 of the original file: its name in the store. */
  photo: sha256Schema,
  format: z.enum(photoFormats),
  fileName: z.string().min(1).max(255),
  bytes: z.int().min(1),
  /** Pixels of the upright (EXIF-turned) picture. */
  width: z.int().min(1),
  height: z.int().min(1),
  /** Name of the embedded colour profile; absent means untagged. */
  profile: z.string().max(120).optional(),
  takenAt: takenAtSchema.optional(),
  addedAt: timeSchema,
  kind: z.enum(shotKinds),
})

export const readingDetailsSchema = z.strictObject({
  insulatorColour: z.enum(insulatorColours).optional(),
  deposits: z
    .array(z.strictObject({ kind: z.enum(depositKinds), place: z.enum(depositPlaces) }))
    .max(limits.depositsPerReading)
    .optional(),
  wetness: z.enum(wetnessLevels).optional(),
  electrodeWear: z.enum(electrodeWearLevels).optional(),
  insulatorDamage: z.enum(insulatorDamageKinds).optional(),
  gap: lengthSchema.optional(),
  /** Oil in the plug well: its own finding (tube seal), never the same as oil on the nose. */
  oilInWell: z.boolean().optional(),
})

/** What a person says of one plug. A suggestion joins beside it, never in its place. */
export const readingSchema = z.strictObject({
  by: z.strictObject({ kind: z.literal('person'), name: personSchema.optional() }),
  at: timeSchema,
  condition: z.enum(conditions).optional(),
  details: readingDetailsSchema,
  note: z.string().max(2000).optional(),
})

export const plugPositionSchema = z.enum(['A', 'B'])

export const slotSchema = z.strictObject({
  cylinder: cylinderSchema,
  /** Only where there are two plugs a cylinder. */
  plug: plugPositionSchema.optional(),
  shots: z.array(shotSchema).max(limits.shotsPerSlot),
  reading: readingSchema.optional(),
})

/** When the plugs were taken out, in the story of the job. Gauge readings belong to the same stages. */
export const stages = ['as found', 'after repair'] as const
export const stageSchema = z.enum(stages)

export const traySchema = z.strictObject({
  id: idSchema,
  name: z.string().min(1).max(80),
  stage: stageSchema,
  createdAt: timeSchema,
  slots: z.array(slotSchema).min(1).max(32),
  /** Photos not yet laid out, in capture order. */
  unsorted: z.array(shotSchema).max(limits.unsortedShotsPerTray),
})

export type TakenAt = z.infer<typeof takenAtSchema>
export type Shot = z.infer<typeof shotSchema>
export type PhotoFormat = Shot['format']
export type ReadingDetails = z.infer<typeof readingDetailsSchema>
export type Reading = z.infer<typeof readingSchema>
export type PlugPosition = z.infer<typeof plugPositionSchema>
export type Slot = z.infer<typeof slotSchema>
export type Stage = z.infer<typeof stageSchema>
export type Tray = z.infer<typeof traySchema>
