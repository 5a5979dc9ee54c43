// A document in memory is what its file holds, also after writes that failed.
import { describe, expect, it } from 'vitest'
import { SimulatedDisk } from '../../../tests/faults/storage/simulated-disk.ts'
import { failingDisk } from '../../../tests/faults/storage/failing-disk.ts'
import { FaultError } from '../fault.ts'
import { storedDocument } from './stored-document.ts'

function begin() {
  const failing = failingDisk(new SimulatedDisk().disk)
  const document = storedDocument<string>({
    disk: failing.disk,
    path: '/note.json',
    name: 'note.json',
    decode: bytes => bytes.toString(),
    encode: text => Buffer.from(text),
  })
  return { failing, document }
}

describe('a stored document', () => {
  it('is null before its first write, and what was written after it', async () => {
    const { document } = begin()
    expect([await document.read(), document.current()]).toEqual([null, null])
    await document.write('first')
    expect([document.current(), await document.read()]).toEqual(['first', 'first'])
  })

  it('goes back to what was there when a write fails, unless a newer one waits behind it', async () => {
    const { failing, document } = begin()
    await document.write('first')
    failing.arm({ at: 1, code: 'ENOSPC', mode: 'once' })
    await expect(document.write('second')).rejects.toThrow(FaultError)
    expect(document.current()).toBe('first')
    failing.arm({ at: 1, code: 'ENOSPC', mode: 'once' })
    const failed = document.write('third')
    const waiting = document.write('fourth')
    await expect(failed).rejects.toThrow(FaultError)
    await waiting
    expect([document.current(), await document.read()]).toEqual(['fourth', 'fourth'])
  })

  it('settles on what the file holds once a disk that would not answer is back', async () => {
    const { failing, document } = begin()
    await document.write('first')
    // Past the rename: stamp, create, two writes counted as one, flush, rename, then the flush of the folder.
    failing.arm({ at: 6, code: 'EIO', mode: 'from then on' })
    await expect(document.write('second')).rejects.toThrow(FaultError)
    expect(await document.settle()).toBe(false)
    expect(document.current()).toBe('first')
    failing.disarm()
    expect(await document.settle()).toBe(true)
    expect([document.current(), await document.read()]).toEqual(['second', 'second'])
  })
})
