// A child that edits a catalogue as fast as it can and writes a line before and after each change, until it is killed.
import { writeSync } from 'node:fs'
import type { Job } from '../../../../shared/job/job-schema.ts'
import { compressionPull } from '../../../../shared/job/testing/example-job.ts'
import { jobCalled, open } from '../example.ts'

const [folder = '', start = '0'] = process.argv.slice(2)
const catalogue = await open(folder)
if (catalogue.readOnly !== null) {
  writeSync(1, `held ${catalogue.readOnly}\n`)
  process.exit(1)
}

/** `id` is about to become `state`; then it is. */
async function step(id: string, state: string, work: () => Promise<unknown>): Promise<void> {
  writeSync(1, `begin ${id} ${state}\n`)
  await work()
  writeSync(1, `done ${id} ${state}\n`)
}

/** With many pulls, so that writing it takes a while: some sixty kilobytes. */
const bulky = (job: Job): Job => ({
  ...job,
  pulls: Array.from({ length: 150 }, (_, n) => ({
    ...compressionPull(`p${n}`, (n % 4) + 1, 120 + (n % 40)),
    note: 'Typed with cold hands, '.repeat(12),
  })),
})

const begun = (id: string, complaint: string): Job =>
  id < 'c' ? jobCalled(id, complaint) : bulky(jobCalled(id, complaint))

const ids = ['a', 'b', 'c', 'd']

async function change(id: string, number: number): Promise<void> {
  const complaint = `change ${number} ${'of this job '.repeat(number % 50)}`.trim()
  if (!catalogue.has(id)) {
    const isInTrash = removed.has(id)
    if (isInTrash) await step(id, removed.get(id) ?? '', () => catalogue.restore(id))
    else await step(id, String(number), () => catalogue.save(begun(id, complaint)))
    removed.delete(id)
    return
  }
  const job = await catalogue.load(id)
  if (number % 11 === 0) {
    await step(id, 'removed', () => catalogue.remove(id))
    removed.set(id, job.complaint.split(' ')[1] ?? '')
  } else await step(id, String(number), () => catalogue.save({ ...job, complaint }))
}

const removed = new Map<string, string>()
for (const id of ids)
  if (!catalogue.has(id))
    await catalogue.restore(id).then(
      () => undefined,
      () => undefined,
    )
writeSync(1, 'ready\n')
// Two jobs at a time, so that the disk is never idle.
for (let number = Number(start) + 1; ; number += 2) {
  const first = ids[number % ids.length] ?? 'a'
  const second = ids[(number + 1) % ids.length] ?? 'b'
  await Promise.all([change(first, number), change(second, number + 1)])
}
