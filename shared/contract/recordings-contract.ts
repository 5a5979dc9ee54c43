// Recordings over the contract: how a file's columns are read, what a preview shows, and what an analysis gives back.
import { oc } from '@orpc/contract'
import { z } from 'zod'
import { cylinderSchema } from '../engine/layout-schema.ts'
import { recordingEntrySchema } from '../gauges/recording-entry.ts'
import { idSchema, sha256Schema } from '../job/common-schema.ts'
import { faultCodes } from './errors.ts'

const operation = oc.errors(faultCodes)

export const recordingTests = ['relative compression', 'crank speed'] as const
export type RecordingTestKind = (typeof recordingTests)[number]

const column = z.int().min(0).max(255)

/** How the text of a recording becomes numbers. Flat, so that it can be kept with the result. */
export const mappingSchema = z.strictObject({
  separator: z.enum(['comma', 'semicolon', 'tab', 'space']),
  decimal: z.enum(['point', 'comma']),
  /** Number of the first line with samples, from 1. */
  firstLine: z.int().min(1).max(1000),
  /** Column of the time; absent where samples come at an even rate without one. */
  timeColumn: column.optional(),
  timeUnit: z.enum(['s', 'ms', 'us']),
  /** Samples a second, where there is no time column. */
  rate: z.number().positive().max(10_000_000).optional(),
  valueColumn: column,
  /** What the value column holds. */
  value: z.enum(['current', 'rpm', 'tooth interval', 'tooth time']),
  /** Amperes (or rpm) for one unit of the column; negative turns the clamp round. */
  scale: z.number().finite(),
  syncColumn: column.optional(),
  /** Teeth in a turn of a full wheel, the missing ones counted; and how many are missing in a row. */
  teeth: z.int().min(4).max(400).optional(),
  missingTeeth: z.int().min(0).max(3).optional(),
})
export type RecordingMapping = z.infer<typeof mappingSchema>

/** How the text is written, where the guess was wrong. */
const writtenSchema = mappingSchema.pick({ separator: true, decimal: true })
export type RecordingWritten = z.infer<typeof writtenSchema>

/** A file that waits in the upload, or one that the catalogue keeps. */
export const recordingSourceSchema = z.union([
  z.strictObject({ ref: idSchema }),
  z.strictObject({ recording: sha256Schema }),
])
export type RecordingPlace = z.infer<typeof recordingSourceSchema>

const wrongRowSchema = z.strictObject({ line: z.int(), text: z.string(), why: z.string() })
export type WrongRow = z.infer<typeof wrongRowSchema>

const columnSchema = z.strictObject({
  name: z.string(),
  unit: z.string(),
  /** First samples as written. */
  samples: z.array(z.string()),
  isNumber: z.boolean(),
})
export type RecordingColumn = z.infer<typeof columnSchema>

export const recordingPreviewSchema = z.strictObject({
  fileName: z.string(),
  bytes: z.number(),
  columns: z.array(columnSchema).max(64),
  /** First lines as written, header and all. */
  lines: z.array(z.string()).max(20),
  guess: mappingSchema,
  /** What could not be guessed, for the person to decide. */
  doubts: z.array(z.string()),
})
export type RecordingPreview = z.infer<typeof recordingPreviewSchema>

const eventSchema = z.strictObject({
  time: z.number(),
  position: z.int(),
  cylinder: cylinderSchema.nullable(),
  leftOut: z.boolean(),
})

export const recordingResultSchema = z.strictObject({
  /** What is kept as a pull; absent where nothing could be measured. */
  entry: recordingEntrySchema.optional(),
  remarks: z.array(z.strictObject({ code: z.string(), text: z.string() })),
  events: z.array(eventSchema),
  /** Lowest and highest level of each of up to a few thousand even stretches, for drawing. */
  envelope: z.strictObject({
    from: z.number(),
    to: z.number(),
    low: z.array(z.number().nullable()),
    high: z.array(z.number().nullable()),
    unit: z.string(),
  }),
  rows: z.int(),
  wrongRows: z.int(),
  firstWrongRows: z.array(wrongRowSchema),
})
export type RecordingAnalysis = z.infer<typeof recordingResultSchema>

export const recordingsContract = {
  /** First rows, guessed columns, problems. The file goes on waiting. */
  preview: operation
    .input(
      z.strictObject({
        source: recordingSourceSchema,
        test: z.enum(recordingTests),
        written: writtenSchema.optional(),
      }),
    )
    .output(recordingPreviewSchema),
  /** A task; its result is the analysis. */
  analyse: operation
    .input(
      z.strictObject({
        jobId: idSchema,
        source: recordingSourceSchema,
        fileName: z.string().min(1).max(255).optional(),
        test: z.enum(recordingTests),
        mapping: mappingSchema,
      }),
    )
    .output(z.strictObject({ taskId: idSchema })),
  /** The analysis of a kept pull once more, with the columns as they were read then: for its picture. A task. */
  redraw: operation
    .input(z.strictObject({ jobId: idSchema, pullId: idSchema }))
    .output(z.strictObject({ taskId: idSchema })),
  /** Moves a waiting file into the catalogue; then the entry can be added as a pull. */
  keep: operation
    .input(z.strictObject({ ref: idSchema }))
    .output(z.strictObject({ recording: sha256Schema })),
  /** Drops a waiting file. */
  discard: operation.input(z.strictObject({ ref: idSchema })).output(z.strictObject({})),
}
