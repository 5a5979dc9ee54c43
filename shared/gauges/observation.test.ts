import { expect, it } from 'vitest'
import { judgeObservations } from './observation.ts'
import { observationKinds } from './observation-entry.ts'
import { observationWords } from './observation-words.ts'
import { jobWith, voided } from './testing/evidence-job.ts'
import { observed } from './testing/make-pull.ts'

const judge = (...pulls: ReturnType<typeof observed>[]) => judgeObservations(jobWith({ pulls }), 'as found')

it('every kind has wording of its own', () => {
  const words = observationKinds.map(kind => observationWords[kind])
  expect(new Set(words).size).toBe(observationKinds.length)
})

it('is only ever noted, yes and no alike', () => {
  const verdicts = judge(observed('blue smoke'), observed('oil milky', 'no'), voided(observed('knock heard')))
  expect(verdicts.map(one => [one.rule, one.verdict, one.why])).toEqual([
    ['Blue smoke at the exhaust', 'noted', 'Yes.'],
    ['Oil is milky', 'noted', 'Looked for, and not so.'],
  ])
})

it('the later answer counts, and says that it changed', () => {
  const first = observed('fuel smell', 'yes', { minute: 1 })
  const later = observed('fuel smell', 'no', { minute: 9 })
  expect(judge(later, first)).toEqual(judge(first, later))
  expect(judge(first, later)).toMatchObject([{ value: 2, unit: 'notes' }])
  expect(judge(first, later)[0]?.why).toContain('Looked for, and not so. It was answered otherwise before')
})
