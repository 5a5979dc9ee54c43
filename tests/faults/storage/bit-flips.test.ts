// Every single-bit flip and every cut of a stored document is found, and the file is named.
import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import { fourInLine } from '../../../shared/job/testing/example-job.ts'
import { defaultSettings } from '../../../shared/contract/settings-schema.ts'
import { FaultError } from '../../../electron/services/fault.ts'
import { contentHash, sealed } from '../../../electron/services/store/content-hash.ts'
import { readShards, writeShard } from '../../../electron/services/store/index-shards.ts'
import { jobBytes, readStoredJob, stampJob } from '../../../electron/services/store/job-file.ts'
import {
  ownLayoutsKind,
  readSmallDocument,
  settingsKind,
} from '../../../electron/services/store/small-documents.ts'
import { summaryOf } from '../../../electron/services/store/summary-of.ts'
import { jobCalled } from './example.ts'
import { SimulatedDisk } from './simulated-disk.ts'

type Tally = { tried: number; found: number; unnamed: string[]; missed: string[] }

/** Tries every flip of one bit; `read` throws a fault that names `file`. */
function flipEveryBit(bytes: Buffer, file: string, read: (bytes: Buffer) => unknown): Tally {
  const tally: Tally = { tried: 0, found: 0, unnamed: [], missed: [] }
  for (let at = 0; at < bytes.length; at += 1)
    for (let bit = 0; bit < 8; bit += 1) {
      const flipped = Buffer.from(bytes)
      flipped.writeUInt8(bytes.readUInt8(at) ^ (1 << bit), at)
      tally.tried += 1
      try {
        read(flipped)
        tally.missed.push(`byte ${at}, bit ${bit}: ${flipped.subarray(at - 8, at + 8).toString()}`)
      } catch (error) {
        if (!(error instanceof FaultError)) throw error
        tally.found += 1
        if (!error.fault.where.startsWith(file)) tally.unnamed.push(error.fault.where)
      }
    }
  return tally
}

const job = stampJob(jobCalled('a', 'Läuft unrund ☂'), 7)

describe('a stored job', () => {
  it('is found altered by every flip of one bit', () => {
    const tally = flipEveryBit(jobBytes(job), 'jobs/a/job.json', bytes =>
      readStoredJob(bytes, 'jobs/a/job.json'),
    )
    console.log(`bit flips of a job: ${tally.found} of ${tally.tried} found`)
    expect(tally).toEqual({ tried: jobBytes(job).length * 8, found: tally.tried, unnamed: [], missed: [] })
  })

  it('is found torn wherever it ends', () => {
    const bytes = jobBytes(job)
    for (let length = 0; length < bytes.length; length += 1)
      expect(() => readStoredJob(bytes.subarray(0, length), 'x')).toThrow(FaultError)
  })

  it('is found altered by a changed number, a field more, a field less, and a hash of something else', () => {
    const { hash, ...rest } = job
    const other = stampJob(jobCalled('a', 'Another complaint'), 7)
    const altered: unknown[] = [
      { ...job, rev: 8 },
      { ...job, note: 'x' },
      { ...rest },
      { ...job, hash: other.hash },
      { ...job, hash: hash?.toUpperCase() },
      { ...job, hash: '' },
    ]
    for (const one of altered)
      expect(() => readStoredJob(Buffer.from(JSON.stringify(one)), 'x')).toThrow(FaultError)
    expect(readStoredJob(jobBytes(job), 'x')).toEqual(job)
  })

  it('with a right hash still has to fit the schema, and one of a newer version is told apart', () => {
    const read = (document: Record<string, unknown>) => () =>
      readStoredJob(Buffer.from(JSON.stringify(sealed(document))), 'x')
    expect(read({ ...job, complaint: 7 })).toThrow(expect.objectContaining({ code: 'DAMAGED' }))
    expect(read({ ...job, extra: true })).toThrow(expect.objectContaining({ code: 'DAMAGED' }))
    expect(read({ ...job, schemaVersion: 99 })).toThrow(expect.objectContaining({ code: 'NEWER_VERSION' }))
  })

  it('nested without end is damage, not a crash', () => {
    const deep = `{"schemaVersion":1,"rev":1,"hash":"x","pulls":${'['.repeat(100_000)}${']'.repeat(100_000)}}`
    expect(() => readStoredJob(Buffer.from(deep), 'x')).toThrow(expect.objectContaining({ code: 'DAMAGED' }))
  })

  it('has a hash that does not depend on the order of its fields', () => {
    expect(contentHash(Object.fromEntries(Object.entries(job).toReversed()))).toBe(job.hash)
  })
})

type Document = { schemaVersion: number; rev: number; value: unknown }

describe('a small document', () => {
  const schemas: [string, Document, z.ZodType][] = [
    ['settings.json', { schemaVersion: 1, rev: 3, value: defaultSettings }, settingsKind.schema],
    ['layouts.json', { schemaVersion: 1, rev: 1, value: [fourInLine] }, ownLayoutsKind.schema],
  ]
  it.each(schemas)('%s is found altered by every flip of one bit', (name, document, schema) => {
    const bytes = Buffer.from(JSON.stringify(sealed(document)))
    expect(readSmallDocument(bytes, name, schema).value).toEqual(document.value)
    const tally = flipEveryBit(bytes, name, flipped => readSmallDocument(flipped, name, schema))
    expect(tally).toEqual({ tried: bytes.length * 8, found: tally.tried, unnamed: [], missed: [] })
  })
})

describe('a shard of the index', () => {
  it('is never used with a flipped bit', async () => {
    const { disk } = new SimulatedDisk()
    await disk.makeFolder('/index')
    const entry = { summary: summaryOf(job), file: { mtimeMs: 1.5, size: 2, ino: 3 } }
    await writeShard(disk, '/index', '2026-03.json', [entry], 1)
    const bytes = await disk.read('/index/2026-03.json')
    const used: number[] = []
    for (let at = 0; at < bytes.length * 8; at += 1) {
      const flipped = Buffer.from(bytes)
      flipped.writeUInt8(bytes.readUInt8(at >> 3) ^ (1 << (at & 7)), at >> 3)
      const other = { ...disk, read: () => Promise.resolve(flipped) }
      if ((await readShards(other, '/index')).entries.size > 0) used.push(at)
    }
    expect(used).toEqual([])
    expect((await readShards(disk, '/index')).entries.get('a')).toEqual(entry)
  })
})
