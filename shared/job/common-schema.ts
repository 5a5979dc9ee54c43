// Small schemas that every document shares: ids, times, hashes, people.
import { z } from 'zod'

export const idSchema = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/)
export const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/)
/** ISO 8601 with offset, e.g. 2026-03-02T09:14:00Z. */
export const timeSchema = z.iso.datetime({ offset: true })
export const personSchema = z.string().min(1).max(80)
