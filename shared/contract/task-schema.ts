// Long work: start gives an id, progress is a stream, cancel is its own operation.
import { z } from 'zod'
import { idSchema, sha256Schema } from '../job/common-schema.ts'
import { faultSchema } from './errors.ts'
import { recordingResultSchema } from './recordings-contract.ts'

/** What became of one file of an import. */
export const fileOutcomeSchema = z.discriminatedUnion('outcome', [
  z.strictObject({ outcome: z.literal('added'), file: z.string(), photo: sha256Schema }),
  /** Same bytes as `of`, a file name already in this job or earlier in this import. */
  z.strictObject({ outcome: z.literal('duplicate'), file: z.string(), photo: sha256Schema, of: z.string() }),
  z.strictObject({ outcome: z.literal('refused'), file: z.string(), why: z.string() }),
])
export type FileOutcome = z.infer<typeof fileOutcomeSchema>

export const problemSchema = z.strictObject({
  /** Path inside the catalogue. */
  file: z.string(),
  kind: z.enum([
    'damaged',
    'missing',
    'newer version',
    'stale index',
    'not named by any job',
    'left-over',
    'foreign',
  ]),
  what: z.string(),
  hint: z.string(),
  /** True when this run put it right (index and derived files only). */
  mended: z.boolean(),
})
export type CatalogueProblem = z.infer<typeof problemSchema>

export const checkReportSchema = z.strictObject({
  jobs: z.int(),
  photos: z.int(),
  /** Absent where there are none. */
  recordings: z.int().optional(),
  bytesRead: z.number(),
  problems: z.array(problemSchema),
})
export type CheckReport = z.infer<typeof checkReportSchema>

export const taskResultSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('intake'),
    jobId: idSchema,
    trayId: idSchema,
    files: z.array(fileOutcomeSchema),
  }),
  z.strictObject({ kind: z.literal('check'), report: checkReportSchema }),
  z.strictObject({ kind: z.literal('demo'), jobIds: z.array(idSchema) }),
  z.strictObject({ kind: z.literal('recording'), analysis: recordingResultSchema }),
])
export type TaskResult = z.infer<typeof taskResultSchema>

export const taskEventSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('progress'), done: z.int(), total: z.int(), what: z.string() }),
  z.strictObject({ kind: z.literal('finished'), result: taskResultSchema }),
  /** Nothing of the work was kept. */
  z.strictObject({ kind: z.literal('cancelled') }),
  z.strictObject({ kind: z.literal('failed'), code: z.string(), fault: faultSchema }),
])
export type TaskEvent = z.infer<typeof taskEventSchema>
