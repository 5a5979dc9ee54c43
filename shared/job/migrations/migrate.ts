// The versions of the job document so far, and how an older one becomes a current one.
import { currentSchemaVersion } from '../schema-version.ts'
import { migrationChain } from './chain.ts'
import type { Migration } from './chain.ts'
import { from1 } from './from-1.ts'

/** One file a step, oldest first. */
const steps: readonly Migration[] = [from1]

const chain = migrationChain('job', currentSchemaVersion, steps)

/** A document of the current version, or a refusal: not a job, no version, newer than this program. */
export const migrate = chain.migrate
