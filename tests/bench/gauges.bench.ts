// Judging every test of a twelve-cylinder job, as ratio to reading the same job from its JSON, which any change costs too.
import { cpus } from 'node:os'
import { expect, it } from 'vitest'
import { layoutById } from '../../shared/engine/layouts.ts'
import { cylindersOf } from '../../shared/engine/relations.ts'
import { judgeAll } from '../../shared/gauges/gauges.ts'
import type { Job } from '../../shared/job/job-schema.ts'
import { newJob } from '../../shared/job/new-job.ts'
import { parseJob } from '../../shared/job/parse-job.ts'
import { type Pull, testKinds } from '../../shared/job/pull-schema.ts'

const at = '2026-03-02T09:00:00Z'
const psi = (value: number) => ({ value, unit: 'psi' as const })
const kPa = (value: number) => ({ value, unit: 'kPa' as const })
const inHg = (value: number) => ({ value, unit: 'inHg' as const })

/** Leaves the pull's id and stage to the caller. */
type Bare = Pull extends infer P ? (P extends Pull ? Omit<P, 'id' | 'stage' | 'at'> : never) : never

const ofCylinder = (cylinder: number): Bare[] => {
  const less = cylinder === 5 ? 40 : cylinder % 3
  return [
    {
      test: 'compression',
      cylinder,
      entry: { final: psi(150 - less), firstPuff: psi(110 - less), puffs: 6 },
    },
    {
      test: 'compression',
      cylinder,
      entry: { final: psi(152 - less), firstPuff: psi(111 - less), puffs: 6 },
    },
    { test: 'compression', cylinder, entry: { final: psi(160 - less / 2), wet: true, oilMillilitres: 15 } },
    { test: 'running compression', cylinder, entry: { idle: psi(62), snap: psi(118) } },
    { test: 'leak-down', cylinder, entry: { form: 'percent', percent: 8 + less, escapes: ['exhaust'] } },
    {
      test: 'balance',
      cylinder,
      entry: { rpmBefore: 760, rpmAfter: 690 + less, vacuumBefore: inHg(19), vacuumAfter: inHg(17.5) },
    },
    { test: 'spark', cylinder, entry: { spark: 'strong', kilovolts: 25 } },
    { test: 'resistance', cylinder, entry: { part: 'lead', ohms: 6000, length: { value: 500, unit: 'mm' } } },
    { test: 'injector balance', cylinder, entry: { before: kPa(300), after: kPa(250 + less) } },
    { test: 'injector', cylinder, entry: { click: 'clear', pulse: true } },
    { test: 'misfire counts', cylinder, entry: { count: less } },
  ]
}
const ofEngine: Bare[] = [
  { test: 'vacuum', entry: { phase: 'idle', reading: inHg(18), needle: 'regular drop' } },
  { test: 'vacuum', entry: { phase: '2500 rpm', reading: inHg(19), trend: 'holds' } },
  { test: 'vacuum', entry: { phase: 'snap', reading: inHg(2), rebound: inHg(23) } },
  { test: 'vacuum', entry: { phase: 'cranking', reading: inHg(4) } },
  { test: 'fuel pressure', entry: { state: 'idle', pressure: kPa(300) } },
  { test: 'trims', entry: { bank: 1, state: 'idle', shortTerm: 4, longTerm: 3, closedLoop: true } },
  { test: 'trims', entry: { bank: 2, state: 'idle', shortTerm: -2, longTerm: 1, closedLoop: true } },
  { test: 'trouble codes', entry: { codes: [{ code: 'P0305' }] } },
  { test: 'mode 06', entry: { hex: '46 A2 0B 24 00 25 00 00 FF FF' } },
  { test: 'swap', entry: { part: 'coil', from: 5, to: 3, result: 'stayed' } },
  { test: 'observation', entry: { seen: 'fault at idle', answer: 'yes' } },
]

const layout = layoutById('v12')
if (!layout) throw new Error('No twelve-cylinder layout.')
const bare = [...cylindersOf(layout).flatMap(ofCylinder), ...ofEngine]
const job: Job = {
  ...newJob({ id: 'bench', trayId: 'tray', now: at, complaint: '', engine: { vehicle: '' }, layout }),
  pulls: (['as found', 'after repair'] as const).flatMap(stage =>
    bare.map(
      (pull, index): Pull => ({ ...pull, id: `${stage === 'as found' ? 'a' : 'b'}${index}`, stage, at }),
    ),
  ),
}

const median = (values: number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0
const timed = (work: () => void): number => {
  const start = performance.now()
  work()
  return performance.now() - start
}

it('judges every test of a twelve-cylinder job', () => {
  const text = JSON.stringify(job)
  const rounds = 200
  for (let warm = 0; warm < 30; warm += 1) judgeAll(job, 'as found')
  const judging = median(Array.from({ length: rounds }, () => timed(() => judgeAll(job, 'as found'))))
  const reading = median(Array.from({ length: rounds }, () => timed(() => parseJob(JSON.parse(text)))))
  const verdicts = judgeAll(job, 'as found')
  const tests = new Set(verdicts.map(one => one.test))
  console.log(
    `${verdicts.length} verdicts of ${tests.size} of ${testKinds.length} tests, ${bare.length} readings: ${judging.toFixed(2)} ms, ` +
      `${(judging / reading).toFixed(2)} times reading the job from JSON (${reading.toFixed(2)} ms) on ${cpus()[0]?.model ?? 'this machine'}`,
  )
  // The two recordings have no reading in this job.
  expect(tests.size).toBe(16)
})
