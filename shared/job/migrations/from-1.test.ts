// A job written by the first version opens with its typed limits where they now stand.
import { expect, it } from 'vitest'
import { parseJob } from '../parse-job.ts'
import { exampleJob } from '../testing/example-job.ts'

const firstVersion = (circumstances: unknown): unknown => ({
  ...exampleJob(),
  schemaVersion: 1,
  circumstances,
})

it('moves the compression specification', () => {
  const outcome = parseJob(
    firstVersion({
      engineWarm: true,
      compressionSpecification: {
        minimum: { value: 9, unit: 'bar' },
        maximumSpread: { value: 1, unit: 'bar' },
      },
    }),
  )
  expect(outcome.ok && outcome.value.circumstances).toEqual({
    engineWarm: true,
    specification: {
      compressionMinimum: { value: 9, unit: 'bar' },
      compressionSpread: { value: 1, unit: 'bar' },
    },
  })
})

it('opens a job without one, and refuses what was never valid', () => {
  expect(parseJob(firstVersion({})).ok).toBe(true)
  expect(parseJob(firstVersion({ compressionSpecification: 'high' })).ok).toBe(false)
  expect(parseJob(firstVersion({ compressionSpecification: { minimum: 9 } })).ok).toBe(false)
})
