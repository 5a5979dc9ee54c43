// Says where cylinders were pulled with different testers: each may read high or low by itself, so only cylinders of one
// tester are held against each other.
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { byTester } from './compression-comparison.ts'
import type { Measured } from './compression-values.ts'
import { inWords } from './shown.ts'
import { sources } from './sources.ts'
import type { CylinderVerdict } from './verdict.ts'

/** One verdict a cylinder where there are several testers, else none. */
export function differentTesters(
  values: readonly Measured[],
  { instruments }: Pick<Job, 'instruments'>,
  stage: Stage,
): CylinderVerdict[] {
  const groups = byTester(values)
  if (groups.length < 2) return []
  const nameOf = (id: string) => instruments?.find(one => one.id === id)?.name ?? id
  return groups.flatMap(group =>
    group.map(({ cylinder, testers }) => ({
      test: 'compression' as const,
      rule: 'one tester',
      cylinder,
      stage,
      value: testers.length,
      unit: testers.length === 1 ? 'tester' : 'testers',
      verdict: 'watch' as const,
      limit: 'cylinders are compared on one tester: gauge, hose volume and valve differ',
      why: `${testers.length === 0 ? 'No tester is named' : `Pulled with ${inWords(testers.map(nameOf))}`}; ${
        group.length === 1
          ? 'no other cylinder was, so it is compared with none.'
          : `compared only within cylinders ${inWords(group.map(one => one.cylinder))}.`
      }`,
      source: sources.practice,
      about: 'reading' as const,
    })),
  )
}
