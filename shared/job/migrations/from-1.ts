// Version 1 to 2: the compression specification joined the other typed limits in one specification.
import type { Migration, StoredDocument } from './chain.ts'

const isRecord = (value: unknown): value is StoredDocument =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Anything that is not as version 1 had it is left for the schema to refuse. */
const circumstancesUp = (circumstances: StoredDocument): StoredDocument => {
  const { compressionSpecification, ...rest } = circumstances
  if (!isRecord(compressionSpecification)) return circumstances
  const { minimum, maximumSpread } = compressionSpecification
  return {
    ...rest,
    specification: {
      ...(minimum !== undefined && { compressionMinimum: minimum }),
      ...(maximumSpread !== undefined && { compressionSpread: maximumSpread }),
    },
  }
}

export const from1: Migration = {
  from: 1,
  what: 'one specification for every typed limit',
  up: document =>
    isRecord(document['circumstances'])
      ? { ...document, circumstances: circumstancesUp(document['circumstances']) }
      : document,
}
