// The adapter under lowdb: merged writes, no early acknowledgement, a failed write that harms no other.
import { describe, expect, it } from 'vitest'
import { FaultError } from '../fault.ts'
import type { Disk } from './disk.ts'
import { DurableJsonAdapter } from './json-adapter.ts'
import { SimulatedDisk } from '../../../tests/faults/storage/simulated-disk.ts'

type Numbered = { number: number }

const adapterOn = (disk: Disk) =>
  new DurableJsonAdapter<Numbered>({
    disk,
    path: '/file.json',
    name: 'file.json',
    decode: bytes => ({ number: Number(bytes.toString()) }),
    encode: ({ number }) => Buffer.from(String(number)),
  })
const numberIn = async (disk: Disk) => Number((await disk.read('/file.json')).toString())

describe('the adapter', () => {
  it('acknowledges each of 3,000 writes only when content at least as new is in the file, in far fewer writes', async () => {
    const disk = new SimulatedDisk().disk
    let renames = 0
    const counted: Disk = {
      ...disk,
      async rename(from, to) {
        renames += 1
        await disk.rename(from, to)
      },
    }
    const adapter = adapterOn(counted)
    let early = 0
    await Promise.all(
      Array.from({ length: 3_000 }, async (_, number) => {
        if (number % 7 === 0) await new Promise(resolve => setImmediate(resolve))
        await adapter.write({ number })
        if ((await numberIn(disk)) < number && adapter.durable?.number !== 2_999) early += 1
      }),
    )
    expect(early).toBe(0)
    expect(await numberIn(disk)).toBe(adapter.durable?.number)
    expect(renames).toBeLessThan(3_000)
  })

  it('rejects a failed write with its cause, and the ones before and after it stand', async () => {
    const disk = new SimulatedDisk().disk
    let isFull = false
    const failing: Disk = {
      ...disk,
      async rename(from, to) {
        if (isFull) throw Object.assign(new Error('full'), { code: 'ENOSPC' })
        await disk.rename(from, to)
      },
    }
    const adapter = adapterOn(failing)
    await adapter.write({ number: 1 })
    isFull = true
    await expect(adapter.write({ number: 2 })).rejects.toThrow(FaultError)
    expect([adapter.durable?.number, await numberIn(disk), await disk.list('/')]).toEqual([
      1,
      1,
      ['file.json'],
    ])
    const failed = adapter.write({ number: 3 })
    const next = adapter.write({ number: 4 })
    const last = adapter.write({ number: 5 })
    await expect(failed).rejects.toThrow('full')
    isFull = false
    await next
    await last
    expect([adapter.durable?.number, await numberIn(disk)]).toEqual([5, 5])
  })

  it('puts the old content back when only the flush of the folder failed, and removes a file that was new', async () => {
    const disk = new SimulatedDisk().disk
    let fails = 1
    const failing: Disk = {
      ...disk,
      async syncFolder(path) {
        if (fails-- > 0) throw Object.assign(new Error('fault'), { code: 'EIO' })
        await disk.syncFolder(path)
      },
    }
    const adapter = adapterOn(failing)
    await expect(adapter.write({ number: 1 })).rejects.toThrow(FaultError)
    expect([adapter.durable, await disk.list('/')]).toEqual([null, []])
    await adapter.write({ number: 1 })
    fails = 1
    await expect(adapter.write({ number: 2 })).rejects.toThrow(FaultError)
    expect([adapter.durable?.number, await numberIn(disk)]).toEqual([1, 1])
  })

  it('reads nothing from a file that is not there, and throws what is wrong with one that is', async () => {
    const disk = new SimulatedDisk().disk
    const strict = new DurableJsonAdapter<Numbered>({
      disk,
      path: '/file.json',
      name: 'file.json',
      decode: () => {
        throw new FaultError('DAMAGED', { what: 'torn', where: 'file.json', hint: '' })
      },
      encode: () => Buffer.from(''),
    })
    expect(await strict.read()).toBeNull()
    await strict.write({ number: 1 })
    await expect(strict.read()).rejects.toThrow('torn')
  })
})
