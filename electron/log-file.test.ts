// The log keeps within its bounds, and a log that cannot be written stops nothing.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { appendBounded, hostLog, logFolder } from './log-file.ts'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'plugtray-log-'))
})
afterEach(() => {
  vi.restoreAllMocks()
  rmSync(folder, { recursive: true, force: true })
})
const read = (name: string) => readFileSync(join(folder, 'log', name), 'utf8')

it('begins a new file when the next line would not fit, and keeps one old one', () => {
  for (const line of ['one.\n', 'two.\n', 'three\n', 'four.\n', 'five.\n'])
    appendBounded(join(folder, 'log'), line, 12)
  expect(read('plugtray.log')).toBe('five.\n')
  expect(read('plugtray.old.log')).toBe('three\nfour.\n')
})

it('is in the folder of the user, whichever catalogue is open', () => {
  const env = { XDG_DATA_HOME: folder, APPDATA: folder, PLUGTRAY_CATALOGUE: '/elsewhere' }
  expect(logFolder(env)).toMatch(/Plugtray[\\/]log$/)
  expect(logFolder(env)).not.toContain('elsewhere')
})

// On macOS the folder of the user is the same in any environment: a test has no business there.
it.skipIf(process.platform === 'darwin')('writes an entry under its id', () => {
  const told = vi.spyOn(process.stderr, 'write').mockReturnValue(true)
  const env = { XDG_DATA_HOME: folder, APPDATA: folder, HOME: folder }
  hostLog(env).error('abcd1234', new RangeError('A. Customer'))
  expect(told.mock.calls[0]?.[0]).toMatch(/ abcd1234 RangeError /)
  expect(readFileSync(join(logFolder(env), 'plugtray.log'), 'utf8')).toMatch(/ abcd1234 RangeError /)
})

it('goes on where the file cannot be written', () => {
  const told = vi.spyOn(process.stderr, 'write').mockReturnValue(true)
  writeFileSync(join(folder, 'file'), '')
  hostLog({ XDG_DATA_HOME: join(folder, 'file'), APPDATA: join(folder, 'file') }).error('abcd1234', 'x')
  expect(told).toHaveBeenCalledOnce()
  expect(existsSync(join(folder, 'file', 'Plugtray'))).toBe(false)
})
