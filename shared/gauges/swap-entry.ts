// A swap test: a part moved from one cylinder to another, or a known-good part fitted, and what the fault did.
import { z } from 'zod'
import { cylinderSchema } from '../engine/layout-schema.ts'

export const swapParts = ['plug', 'lead', 'coil', 'injector', 'other'] as const
export const swapResults = ['followed the part', 'stayed', 'gone', 'on both', 'did not come back'] as const
export const swapWatched = ['misfire counts', 'balance', 'spark', 'plug', 'by ear'] as const

export const swapEntrySchema = z.strictObject({
  part: z.enum(swapParts),
  /** What "other" was. */
  named: z.string().min(1).max(80).optional(),
  /** Parts that were moved along with it. */
  also: z.array(z.enum(swapParts)).max(swapParts.length).optional(),
  from: cylinderSchema,
  /** Left out when a known-good part was fitted at `from`. */
  to: cylinderSchema.optional(),
  result: z.enum(swapResults),
  watched: z.enum(swapWatched).optional(),
  /** The fault comes and goes. */
  intermittent: z.boolean().optional(),
})
export type SwapEntry = z.infer<typeof swapEntrySchema>
