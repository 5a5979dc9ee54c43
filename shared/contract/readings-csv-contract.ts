// Readings from a spreadsheet over the contract: the host cuts a CSV file into cells; what they mean is decided on the page.
import { oc } from '@orpc/contract'
import { z } from 'zod'
import { idSchema } from '../job/common-schema.ts'
import { faultCodes } from './errors.ts'

const operation = oc.errors(faultCodes)

export const csvSeparators = ['comma', 'semicolon', 'tab'] as const
export type CsvSeparator = (typeof csvSeparators)[number]

export const csvTableSchema = z.strictObject({
  fileName: z.string(),
  separator: z.enum(csvSeparators),
  /** Every row that holds anything, with its line in the file, from 1. */
  rows: z.array(z.strictObject({ line: z.int(), cells: z.array(z.string()) })),
})
export type CsvTable = z.infer<typeof csvTableSchema>

export const readingsCsvContract = {
  /** Cuts a waiting upload into cells, with the separator given or guessed. The file goes on waiting. */
  read: operation
    .input(z.strictObject({ ref: idSchema, separator: z.enum(csvSeparators).optional() }))
    .output(csvTableSchema),
}
