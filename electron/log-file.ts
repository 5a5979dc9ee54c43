// The hosts' log: lines on stderr and in a file of bounded size beside the catalogue, where the id of a fault is found.
import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import process from 'node:process'
import { catalogueFolder } from './cli/catalogue-folder.ts'
import { limits } from './limits.ts'
import { type Log, logTo } from './services/log.ts'

/** Folder of the log: in the user's data folder, whichever catalogue is open. */
export const logFolder = (env: Record<string, string | undefined>): string =>
  join(dirname(catalogueFolder(undefined, { ...env, PLUGTRAY_CATALOGUE: undefined })), 'log')

/** Two files: when the first is full it takes the place of the second. */
export function appendBounded(folder: string, line: string, most: number = limits.logBytes): void {
  mkdirSync(folder, { recursive: true })
  const file = join(folder, 'plugtray.log')
  const size = statSync(file, { throwIfNoEntry: false })?.size ?? 0
  if (size + line.length > most) renameSync(file, join(folder, 'plugtray.old.log'))
  appendFileSync(file, line)
}

export function hostLog(env: Record<string, string | undefined>): Log {
  const folder = logFolder(env)
  return logTo(line => {
    process.stderr.write(line)
    try {
      appendBounded(folder, line)
    } catch {
      // A log that cannot be written must not stop the work; the line is on stderr.
    }
  })
}
