// Reads published check data kept beside these tests; `source` in each file says where its values come from.
import { readFileSync } from 'node:fs'
import type { z } from 'zod'

/** Parses a data file with the part of its shape that a test needs. */
export function published<T>(name: string, schema: z.ZodType<T>): T {
  return schema.parse(JSON.parse(readFileSync(new URL(`data/${name}.json`, import.meta.url), 'utf8')))
}

/** The most that a value printed with so many decimals can be off by rounding. */
export const halfUnit = (decimals: number): number => 0.5 * 10 ** -decimals + 1e-9
