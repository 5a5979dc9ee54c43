// Errors of the system become sentences that name the file inside the catalogue; bugs stay bugs.
import { describe, expect, it } from 'vitest'
import { FaultError } from '../fault.ts'
import { diskFault, onDisk } from './disk-fault.ts'

const system = (code: string) => Object.assign(new Error(`${code}: open '/home/ana/catalogue/x'`), { code })

describe('a fault of the disk', () => {
  it.each([
    'ENOSPC',
    'EDQUOT',
    'EROFS',
    'EACCES',
    'EPERM',
    'EIO',
    'ENOENT',
    'ENOTDIR',
    'EBUSY',
    'EMFILE',
    'EXDEV',
  ])('%s says what, where and what to do, and no path outside', code => {
    const fault = diskFault(system(code), 'jobs/a/job.json')
    if (!(fault instanceof FaultError)) throw new Error('not a fault')
    expect(fault.code).toBe('DISK')
    expect(fault.fault.where).toBe('jobs/a/job.json')
    expect(fault.fault.what).toMatch(/[.]$/)
    expect(fault.fault.hint).toMatch(/[.]$/)
    expect(fault.message).not.toContain('/home')
  })

  it('leaves faults and bugs as they are', async () => {
    const fault = new FaultError('DAMAGED', { what: '', where: '', hint: '' })
    expect(diskFault(fault, 'x')).toBe(fault)
    const bug = new TypeError('a bug')
    expect(diskFault(bug, 'x')).toBe(bug)
    const invalid = Object.assign(new TypeError('x'), { code: 'ERR_INVALID_ARG_TYPE' })
    await expect(onDisk('x', () => Promise.reject(invalid))).rejects.toBe(invalid)
  })
})
