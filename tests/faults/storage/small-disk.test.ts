// A real disk of one MiB runs full, and is mounted for reading only: nothing that was there is lost, and it goes on afterwards.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmdirSync } from 'node:fs'
import { mkdir, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { compressionPull } from '../../../shared/job/testing/example-job.ts'
import { faultOf, jobCalled, open, saveAgain } from './example.ts'

const place = mkdtempSync(join(tmpdir(), 'plugtray-small-'))
const mount = (...options: string[]) =>
  spawnSync('mount', [...options, place], { encoding: 'utf8', timeout: 10_000 })
const mounted = mount('-t', 'tmpfs', '-o', 'size=1m', 'tmpfs')
const isMounted = mounted.status === 0
if (!isMounted)
  console.log(
    `small disk: skipped, a file system of 1 MiB cannot be mounted here (${mounted.error?.message ?? mounted.stderr.trim()})`,
  )

afterAll(() => {
  if (isMounted) spawnSync('umount', [place])
  rmdirSync(place)
})

const bulky = (id: string) => ({
  ...jobCalled(id),
  pulls: Array.from({ length: 200 }, (_, n) => ({
    ...compressionPull(`p${n}`, (n % 4) + 1),
    note: 'x'.repeat(300),
  })),
})

describe.skipIf(!isMounted)('a disk of one MiB', () => {
  it('says that it is full, keeps all that it acknowledged, and goes on once there is room', async () => {
    const folder = join(place, 'catalogue')
    const catalogue = await open(folder)
    const kept: string[] = []
    const refused = await faultOf(async () => {
      for (let number = 0; number < 100; number += 1) {
        await catalogue.save(bulky(`job-${number}`))
        kept.push(`job-${number}`)
      }
    })
    expect(refused?.code).toBe('DISK')
    expect(refused?.fault.what).toContain('full')
    expect(kept.length).toBeGreaterThan(2)
    // To the last byte, so that not even the first block of a small change fits.
    await mkdir(join(place, 'other'))
    const filler = join(place, 'other', 'filler')
    await writeFile(filler, Buffer.alloc(2 ** 20)).catch(() => undefined)
    expect((await faultOf(() => saveAgain(catalogue, 'job-0', 'does not fit')))?.code).toBe('DISK')
    expect((await catalogue.load('job-0')).complaint).toBe('job-0 runs rough')
    expect(
      catalogue
        .list()
        .map(({ id }) => id)
        .toSorted(),
    ).toEqual(kept.toSorted())

    await rm(filler)
    for (const id of kept.splice(-3)) await catalogue.remove(id)
    await rm(join(folder, 'trash'), { recursive: true })
    await mkdir(join(folder, 'trash'))
    expect((await saveAgain(catalogue, 'job-0', 'fits again')).complaint).toBe('fits again')
    expect((await catalogue.check({ mend: false })).problems).toEqual([])
    await catalogue.close()
  })

  it('mounted for reading only can still be looked at, and says why it cannot be changed', async () => {
    const folder = join(place, 'catalogue')
    expect(mount('-o', 'remount,ro').status).toBe(0)
    const catalogue = await open(folder)
    expect(catalogue.readOnly).toContain('cannot be written to')
    expect((await catalogue.load('job-0')).complaint).toBe('fits again')
    expect((await faultOf(() => saveAgain(catalogue, 'job-0', 'no')))?.code).toBe('READ_ONLY')
    await catalogue.close()
    expect(mount('-o', 'remount,rw').status).toBe(0)
    const again = await open(folder)
    expect(again.readOnly).toBeNull()
    await saveAgain(again, 'job-0', 'goes on')
    // While it is in use the disk turns read-only, as a failing one does.
    expect(mount('-o', 'remount,ro').status).toBe(0)
    const fault = await faultOf(() => saveAgain(again, 'job-0', 'no'))
    expect([fault?.code, fault?.fault.what]).toEqual(['DISK', expect.stringContaining('only be read')])
    expect(mount('-o', 'remount,rw').status).toBe(0)
    expect((await saveAgain(again, 'job-0', 'and on')).complaint).toBe('and on')
    await again.close()
  })
})
