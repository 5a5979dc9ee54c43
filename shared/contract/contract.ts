// The typed API that both hosts serve and the page calls. An operation is named here and nowhere else.
import { eventIterator, oc } from '@orpc/contract'
import { z } from 'zod'
import { layoutSchema } from '../engine/layout-schema.ts'
import { commandSchema, slotAddressSchema } from '../job/command-schema.ts'
import { idSchema } from '../job/common-schema.ts'
import { engineSchema, jobSchema } from '../job/job-schema.ts'
import { faultCodes } from './errors.ts'
import { readingsCsvContract } from './readings-csv-contract.ts'
import { recordingsContract } from './recordings-contract.ts'
import { settingsSchema } from './settings-schema.ts'
import { jobSummarySchema } from './summary-schema.ts'
import { taskEventSchema } from './task-schema.ts'

const operation = oc.errors(faultCodes)
const byId = z.strictObject({ id: idSchema })
const started = z.strictObject({ taskId: idSchema })

/** A job as stored, and what undo and redo would do in this session. */
export const jobStateSchema = z.strictObject({
  job: jobSchema,
  undo: z.string().nullable(),
  redo: z.string().nullable(),
})
export type JobState = z.infer<typeof jobStateSchema>

export const newJobSchema = z.strictObject({
  complaint: z.string().max(4000),
  engine: engineSchema,
  layout: layoutSchema,
})
export type NewJob = z.infer<typeof newJobSchema>

export const catalogueStatusSchema = z.strictObject({
  appVersion: z.string(),
  host: z.enum(['desktop', 'browser', 'memory']),
  /** Folder of the catalogue, for the Setup page. */
  folder: z.string(),
  /** Why changes are refused, or null when this window may write. */
  readOnly: z.string().nullable(),
})
export type CatalogueStatus = z.infer<typeof catalogueStatusSchema>

/** What changed on disk, so that every window stays live. */
export const changeSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('job'), id: idSchema, rev: z.int() }),
  z.strictObject({ kind: z.literal('removed'), id: idSchema }),
  z.strictObject({ kind: z.literal('settings') }),
  z.strictObject({ kind: z.literal('layouts') }),
])
export type Change = z.infer<typeof changeSchema>

export const audiences = ['shop', 'customer'] as const

export const contract = {
  catalogue: {
    status: operation.output(catalogueStatusSchema),
    /** Verifies every document and photo; rebuilds index and derived files. A task. */
    check: operation.input(z.strictObject({ mend: z.boolean() })).output(started),
    changes: operation.output(eventIterator(changeSchema)),
  },
  settings: {
    get: operation.output(settingsSchema),
    set: operation.input(settingsSchema).output(settingsSchema),
  },
  layouts: {
    /** The shop's own layouts; built-in ones come with the app. */
    own: operation.output(z.array(layoutSchema)),
    save: operation.input(layoutSchema).output(z.array(layoutSchema)),
    remove: operation.input(byId).output(z.array(layoutSchema)),
  },
  jobs: {
    list: operation.output(z.array(jobSummarySchema)),
    create: operation.input(newJobSchema).output(jobStateSchema),
    get: operation.input(byId).output(jobStateSchema),
    apply: operation.input(z.strictObject({ id: idSchema, command: commandSchema })).output(jobStateSchema),
    undo: operation.input(byId).output(jobStateSchema),
    redo: operation.input(byId).output(jobStateSchema),
    /** Same engine, new visit: vehicle and layout are carried over, evidence is not. */
    duplicate: operation.input(byId).output(jobStateSchema),
    /** To the trash; `restore` brings it back. */
    remove: operation.input(byId).output(byId),
    restore: operation.input(byId).output(jobStateSchema),
  },
  intake: {
    /** `refs` come from the upload route, or in the desktop window from the preload. A task. */
    start: operation
      .input(
        z.strictObject({
          jobId: idSchema,
          trayId: idSchema,
          refs: z.array(idSchema).min(1).max(5000),
          to: slotAddressSchema.optional(),
        }),
      )
      .output(started),
  },
  tasks: {
    watch: operation.input(z.strictObject({ taskId: idSchema })).output(eventIterator(taskEventSchema)),
    cancel: operation
      .input(z.strictObject({ taskId: idSchema }))
      .output(z.strictObject({ cancelled: z.boolean() })),
  },
  writeUp: {
    /** Draws the report; the bytes are then at the export route under `exportId`. */
    pdf: operation
      .input(z.strictObject({ jobId: idSchema, audience: z.enum(audiences) }))
      .output(z.strictObject({ exportId: idSchema, fileName: z.string(), bytes: z.int() })),
  },
  recordings: recordingsContract,
  readingsCsv: readingsCsvContract,
  demo: {
    /** Puts the invented demonstration jobs into the catalogue. A task. */
    load: operation.output(started),
  },
}
export type Contract = typeof contract
