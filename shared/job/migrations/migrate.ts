// The versions of the job document so far, and how an older one becomes a current one.
import { currentSchemaVersion } from '../schema-version.ts'
import { migrationChain } from './chain.ts'
import type { Migration } from './chain.ts'

/** One file a step, oldest first. The first version is the current one, so there is none yet. */
const steps: readonly Migration[] = []

const chain = migrationChain('job', currentSchemaVersion, steps)

/** A document of the current version, or a refusal: not a job, no version, newer than this program. */
export const migrate = chain.migrate
