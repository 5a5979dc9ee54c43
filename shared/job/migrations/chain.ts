// Bringing an older document up to date one version at a time; the steps are checked when the chain is made.
import { done, refuse } from '../refusal.ts'
import type { Outcome } from '../refusal.ts'

export type StoredDocument = { readonly [field: string]: unknown }

/** One step up: takes a document of version `from` to version `from + 1`. It need not set schemaVersion. */
export type Migration = {
  from: number
  /** What changes, in a few words. */
  what: string
  up: (document: StoredDocument) => StoredDocument
}

export type MigrationChain = {
  current: number
  /** Oldest version that can be read. */
  oldest: number
  migrate: (raw: unknown) => Outcome<unknown>
  isNewer: (raw: unknown) => boolean
}

const isDocument = (raw: unknown): raw is StoredDocument =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw)

const versionOf = (raw: unknown): unknown =>
  isDocument(raw) && Object.hasOwn(raw, 'schemaVersion') ? raw['schemaVersion'] : undefined

/**
 * `name` is the kind of document, e.g. "job". Throws an Error when the steps are not numbered without gaps up to
 * `current`: a mistake in the program, not in a file.
 */
export const migrationChain = (
  name: string,
  current: number,
  steps: readonly Migration[],
): MigrationChain => {
  const oldest = current - steps.length
  steps.forEach((step, i) => {
    if (step.from !== oldest + i)
      throw new Error(`Migration ${i + 1} of the ${name} starts at ${step.from}, not at ${oldest + i}.`)
  })
  const isNewer = (raw: unknown): boolean => {
    const version = versionOf(raw)
    return typeof version === 'number' && version > current
  }

  const migrate = (raw: unknown): Outcome<unknown> => {
    if (!isDocument(raw))
      return refuse(`This is not a ${name} document.`, name, 'Choose a file that Plugtray has written.')
    const version = versionOf(raw)
    if (typeof version !== 'number' || !Number.isInteger(version))
      return refuse(
        `At schemaVersion: this ${name} does not say which version of the document it is.`,
        'schemaVersion',
        `Set schemaVersion to ${current} if the ${name} follows the published schema.`,
      )
    if (version > current)
      return refuse(
        `This ${name} was written by a newer version of Plugtray (document version ${version}; this one reads up to ${current}).`,
        'schemaVersion',
        'Update Plugtray to open it. Nothing in it was changed.',
      )
    if (version < oldest)
      return refuse(
        `At schemaVersion: there is no ${name} document of version ${version}.`,
        'schemaVersion',
        `Versions ${oldest} to ${current} can be read.`,
      )
    const upToDate = steps
      .slice(version - oldest)
      .reduce<StoredDocument>((document, { from, up }) => ({ ...up(document), schemaVersion: from + 1 }), raw)
    return done(upToDate)
  }

  return { current, oldest, migrate, isNewer }
}
