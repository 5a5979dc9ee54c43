// The published JSON Schema of the job document, made from the schema that the program itself uses.
import { z } from 'zod'
import { jobSchema } from './job-schema.ts'
import { currentSchemaVersion } from './schema-version.ts'

/**
 * JSON Schema, draft 2020-12. It holds what one field can say; the rules that span fields are in check-job.ts.
 * The copy in job.schema.json is held equal by json-schema.test.ts.
 */
export const jobJsonSchema = (): object => ({
  title: 'Plugtray job',
  description: `Job document, version ${currentSchemaVersion}: one engine, one visit.`,
  ...z.toJSONSchema(jobSchema, { target: 'draft-2020-12' }),
})
