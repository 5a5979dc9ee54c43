// Running compression: against the same cylinder's cranking, against its sisters, and what is not compared.
import { expect, it } from 'vitest'
import type { Pull, PullOf } from '../job/pull-schema.ts'
import { judgeRunningCompression } from './running-compression.ts'
import { compression, jobWith, onePullEach, psi } from './testing/evidence-job.ts'

let made = 0
const running = (cylinder: number, idle: number, snap?: number): PullOf<'running compression'> => ({
  id: `running-${++made}`,
  stage: 'as found',
  at: '2026-03-02T09:00:00Z',
  test: 'running compression',
  cylinder,
  entry: { idle: psi(idle), ...(snap === undefined ? {} : { snap: psi(snap) }) },
})
const one = (pulls: Pull[], cylinder: number, rule: string) =>
  judgeRunningCompression(jobWith({ pulls }), 'as found').find(
    found => found.cylinder === cylinder && found.rule === rule,
  )

it('is noted as a share of cranking', () => {
  const pulls = [compression(1, 150), running(1, 60, 120)]
  expect(one(pulls, 1, 'idle of cranking')).toMatchObject({ value: 40, unit: '%', verdict: 'noted' })
  expect(one(pulls, 1, 'snap of cranking')?.value).toBe(80)
  expect(one([running(1, 60, 120)], 1, 'idle of cranking')).toBeUndefined()
})
it('far below the sisters with good cranking speaks of breathing', () => {
  const pulls = [...onePullEach([150, 150, 150]), running(1, 60), running(2, 62), running(3, 36)]
  const low = one(pulls, 3, 'idle beside sisters')
  expect(low?.verdict).toBe('watch')
  expect(low?.why).toContain('cam lobe')
  expect(one(pulls, 1, 'idle beside sisters')?.verdict).toBe('cannot be called')
})
it('far above the sisters speaks of the exhaust', () => {
  expect(one([running(1, 60), running(2, 62), running(3, 90)], 3, 'idle beside sisters')?.why).toContain(
    'exhaust',
  )
})
it('within the sisters is within', () => {
  expect(
    one(
      [60, 62, 61, 60].map((idle, i) => running(i + 1, idle)),
      2,
      'idle beside sisters',
    )?.verdict,
  ).toBe('within')
})
it('says that a snap below idle cannot be', () => {
  expect(one([running(1, 90, 60)], 1, 'snap above idle')?.verdict).toBe('watch')
})
it('compares no cylinders of different testers', () => {
  const pulls = [running(1, 60), running(2, 62), running(3, 36)].map((pull, i) => ({
    ...pull,
    instrument: i === 2 ? 'b' : 'a',
  }))
  expect(one(pulls, 3, 'idle beside sisters')).toBeUndefined()
  expect(one(pulls, 3, 'one tester')?.about).toBe('reading')
})
