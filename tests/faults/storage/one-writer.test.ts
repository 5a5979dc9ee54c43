// However many processes open a catalogue at once, and whatever a dead one left behind: exactly one writes.
import { spawnSync } from 'node:child_process'
import { mkdir, mkdtemp, readFile, rm, utimes, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { realDisk } from '../../../electron/services/store/disk.ts'
import { type Holder, thisProcess } from '../../../electron/services/store/holder.ts'
import { takeLock } from '../../../electron/services/store/lock.ts'
import { type Bundle, bundleChild, type Child, startChild } from './bundle-child.ts'
import { isLong } from './example.ts'

const rounds = isLong ? 1_000 : 40
const many = 8
let bundle: Bundle
let place = ''

beforeAll(async () => {
  bundle = await bundleChild('ask-for-lock')
  place = await mkdtemp(join(tmpdir(), 'plugtray-lock-'))
})
afterAll(async () => {
  bundle.remove()
  await rm(place, { recursive: true, force: true })
})

const newFolder = async (name: string): Promise<string> => {
  const folder = join(place, name)
  await mkdir(folder, { recursive: true })
  return folder
}

const startMany = async (): Promise<Child[]> => {
  const children = Array.from({ length: many }, () => startChild(bundle))
  for (const child of children) expect(await child.line()).toBe('ready')
  return children
}
const endAll = async (children: readonly Child[]): Promise<void> => {
  for (const child of children) child.process.kill('SIGKILL')
  await Promise.all(children.map(child => child.ended))
}

/** Pid of the one winner; in words whatever else happened. */
function winnerAmong(answers: readonly (string | null)[]): { winner: number; wrong: string[] } {
  const won = answers.flatMap(answer => (answer?.startsWith('won ') ? [Number(answer.slice(4))] : []))
  const winner = won[0] ?? 0
  const wrong = won.length === 1 ? [] : [`${won.length} processes won`]
  for (const answer of answers)
    if (!answer?.startsWith('won ') && !answer?.includes(`(process ${winner})`))
      wrong.push(`a loser was told: ${answer}`)
  return { winner, wrong }
}

/** A process that has run and ended, so that its pid is nobody's. */
const deadPid = (): number => spawnSync(process.execPath, ['-e', '']).pid

const lockOf = (more: Partial<Holder>): string =>
  JSON.stringify({ ...thisProcess('0.0.0', new Date('2026-03-02T08:00:00Z')), ...more })

describe('one writer', () => {
  it('of eight processes that ask for a free or a dead lock at once, exactly one gets it', async () => {
    const children = await startMany()
    const wrong: string[] = []
    for (let round = 0; round < rounds; round += 1) {
      const folder = await newFolder(`round-${round}`)
      const stale = lockOf({ pid: deadPid() })
      if (round % 2 === 1) await writeFile(join(folder, 'lock'), stale)
      for (const child of children) child.tell(`ask ${folder}`)
      const answers = await Promise.all(children.map(child => child.line()))
      const result = winnerAmong(answers)
      wrong.push(...result.wrong.map(one => `round ${round}: ${one}`))
      const holder = await readFile(join(folder, 'lock'), 'utf8')
      if (!holder.includes(`"pid":${result.winner},`)) wrong.push(`round ${round}: the lock names another`)
      for (const child of children) child.tell('letgo')
      await Promise.all(children.map(child => child.line()))
    }
    await endAll(children)
    console.log(`one writer: ${many} processes, ${rounds} rounds, ${wrong.length} with other than one writer`)
    expect(wrong).toEqual([])
  })

  it('of eight that start on a new folder at once, one writes, and when it is killed the next takes over', async () => {
    const folder = await newFolder('catalogue')
    const children = await startMany()
    for (const child of children) child.tell(`open ${folder}`)
    const { winner, wrong } = winnerAmong(await Promise.all(children.map(child => child.line())))
    expect(wrong).toEqual([])
    const killed = children.find(child => child.process.pid === winner)
    killed?.process.kill('SIGKILL')
    await killed?.ended
    const begun = performance.now()
    const [next] = children.filter(child => child !== killed)
    next?.tell(`open ${folder}`)
    expect(await next?.line()).toBe(`won ${next?.process.pid}`)
    expect(performance.now() - begun).toBeLessThan(2_000)
    await endAll(children)
  })

  it('takes over also where a process died in the middle of taking over', async () => {
    const folder = await newFolder('guarded')
    const stale = lockOf({ pid: deadPid() })
    await writeFile(join(folder, 'lock'), stale)
    const { createHash } = await import('node:crypto')
    const guard = `lock.after-${createHash('sha256').update(stale).digest('hex').slice(0, 16)}`
    await writeFile(join(folder, guard), lockOf({ pid: deadPid() }))
    const children = await startMany()
    for (const child of children) child.tell(`ask ${folder}`)
    expect(winnerAmong(await Promise.all(children.map(child => child.line()))).wrong).toEqual([])
    await endAll(children)
  })
})

const minutesAgo = (minutes: number) => new Date(Date.now() - minutes * 60_000)

describe('a lock found', () => {
  it.each([
    ['of a process that is gone', { pid: deadPid() }, 0, 'taken over'],
    ['of a living process', { pid: process.ppid, started: '' }, 0, 'left'],
    ['of a living process, not refreshed for a day', { pid: process.ppid, started: '' }, 24 * 60, 'left'],
    ['of a living process, by a clock a day ahead', { pid: process.ppid, started: '' }, -24 * 60, 'left'],
    ['of a pid that another process has now', { pid: process.ppid, started: '1' }, 0, 'taken over'],
    [
      'of before the last start of this machine',
      { pid: process.ppid, started: '', boot: 'earlier' },
      0,
      'taken over',
    ],
    ['of another machine, refreshed lately', { host: 'elsewhere' }, 29, 'left'],
    ['of another machine, not refreshed for long', { host: 'elsewhere' }, 31, 'taken over'],
    ['of another machine of the same name', { machine: 'other', pid: deadPid() }, 29, 'left'],
    ['of another machine, by a clock a day ahead', { host: 'elsewhere' }, -24 * 60, 'left'],
  ])('%s', async (_, more, minutes, outcome) => {
    const folder = await newFolder(`found-${Math.random()}`)
    const lock = join(folder, 'lock')
    await writeFile(lock, lockOf(more))
    await utimes(lock, minutesAgo(minutes), minutesAgo(minutes))
    const attempt = await takeLock(realDisk, folder, '0.0.0')
    expect('lock' in attempt ? 'taken over' : 'left').toBe(outcome)
    if ('lock' in attempt) await attempt.lock.release()
  })

  it('that cannot be read counts as somebody who is just writing it, until it is old', async () => {
    const folder = await newFolder('torn')
    await writeFile(join(folder, 'lock'), '{"pid":')
    expect(await takeLock(realDisk, folder, '0.0.0')).toEqual({
      heldBy: expect.stringContaining('Another Plugtray'),
    })
    await utimes(join(folder, 'lock'), minutesAgo(31), minutesAgo(31))
    expect('lock' in (await takeLock(realDisk, folder, '0.0.0'))).toBe(true)
  })

  it('is noticed by a holder that slept too long: it writes no more', async () => {
    const folder = await newFolder('slept')
    const attempt = await takeLock(realDisk, folder, '0.0.0')
    if (!('lock' in attempt)) throw new Error('the lock was free')
    expect(await attempt.lock.lost()).toBeNull()
    await writeFile(join(folder, 'lock'), lockOf({ host: 'elsewhere', pid: 4711 }))
    expect(await attempt.lock.lost()).toContain('on elsewhere (process 4711)')
    await attempt.lock.release()
    expect(await readFile(join(folder, 'lock'), 'utf8')).toContain('elsewhere')
  })

  it('that somebody deleted is asked for again', async () => {
    const folder = await newFolder('deleted')
    const attempt = await takeLock(realDisk, folder, '0.0.0')
    if (!('lock' in attempt)) throw new Error('the lock was free')
    await rm(join(folder, 'lock'))
    expect(await attempt.lock.lost()).toBeNull()
    expect(await readFile(join(folder, 'lock'), 'utf8')).toContain(`"pid":${process.pid},`)
    await attempt.lock.release()
  })
})
