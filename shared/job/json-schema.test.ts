// To write job.schema.json anew after a change of the schema: UPDATE_SCHEMA=1 npx vitest run shared/job/json-schema.test.ts
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { jobJsonSchema } from './json-schema.ts'
import { arbitraryJob } from './testing/arbitrary-job.ts'
import { exampleJob } from './testing/example-job.ts'

const file = join(import.meta.dirname, 'job.schema.json')

describe('the published JSON Schema', () => {
  it('is the one the program uses', () => {
    if (process.env['UPDATE_SCHEMA'] === '1')
      writeFileSync(file, `${JSON.stringify(jobJsonSchema(), null, 2)}\n`)
    expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(jobJsonSchema())
  })

  it('accepts every job and refuses what the program refuses, in a validator that is not ours', () => {
    const published: object = JSON.parse(readFileSync(file, 'utf8'))
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(published)
    fc.assert(
      fc.property(arbitraryJob, job => {
        validate(job)
        expect(validate.errors ?? []).toEqual([])
      }),
      { numRuns: 60 },
    )
    const job = exampleJob()
    expect(validate({ ...job, extra: 1 })).toBe(false)
    expect(validate({ ...job, schemaVersion: 3 })).toBe(false)
    expect(validate({ ...job, createdAt: 'yesterday' })).toBe(false)
    expect(validate({ ...job, trays: [] })).toBe(false)
  })
})
