// A check counts the recordings, finds damaged, missing and unnamed ones, and leaves them as they are.
import { appendFile, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Job } from '../../../shared/job/job-schema.ts'
import { jobCalled, open } from '../../../tests/faults/storage/example.ts'
import { checkCatalogue } from './check.ts'
import { recordingName } from './recordings.ts'

let folder = ''
let named = ''
let unnamed = ''

const withRecording = (job: Job, recording: string): Job => ({
  ...job,
  pulls: [
    ...job.pulls,
    {
      id: 'r1',
      test: 'relative compression',
      stage: 'as found',
      at: '2026-03-02T09:14:00Z',
      entry: {
        source: {
          fileName: 'cranking.csv',
          recording,
          seconds: 8,
          samples: 8000,
          mapping: {},
          method: 'made',
        },
        synced: false,
        values: [{ position: 1, percent: 100 }],
        remarks: [],
      },
    },
  ],
})

beforeEach(async () => {
  const place = await mkdtemp(join(tmpdir(), 'plugtray-check-recordings-'))
  folder = join(place, 'catalogue')
  const catalogue = await open(folder)
  const file = join(place, 'device.csv')
  await writeFile(file, 'time,current\n0,1\n')
  named = await catalogue.recordings.put(file, 'device.csv')
  await writeFile(file, 'time,current\n0,2\n')
  unnamed = await catalogue.recordings.put(file, 'device.csv')
  await catalogue.save(withRecording(jobCalled('a'), named))
  await catalogue.close()
})
afterEach(() => rm(join(folder, '..'), { recursive: true, force: true }))

const problems = async () =>
  (await checkCatalogue(folder, { mend: false })).problems.map(({ file, kind }) => [file, kind])

describe('a check of recordings', () => {
  it('counts them and tells the one that no pull was made from', async () => {
    expect(await checkCatalogue(folder, { mend: false })).toMatchObject({ recordings: 2 })
    expect(await problems()).toEqual([[recordingName(unnamed), 'not named by any job']])
  })

  it('tells a damaged one, a missing one and what does not belong', async () => {
    await rm(join(folder, recordingName(unnamed)))
    await appendFile(join(folder, recordingName(named)), '0,3\n')
    expect(await problems()).toEqual([[recordingName(named), 'damaged']])
    await rm(join(folder, recordingName(named)))
    await writeFile(join(folder, 'recordings', named.slice(0, 2), 'notes.txt'), 'x')
    expect(await problems()).toEqual([
      [`recordings/${named.slice(0, 2)}/notes.txt`, 'foreign'],
      [recordingName(named), 'missing'],
    ])
  })
})
