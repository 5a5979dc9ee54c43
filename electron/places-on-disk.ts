// Where things lie, in the source tree and in the build alike: the page, the demonstration jobs, the version.
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { z } from 'zod'

/** The folder that holds package.json, found upwards from this file. */
function projectFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url))
  while (!existsSync(join(folder, 'package.json'))) {
    const parent = dirname(folder)
    if (parent === folder) throw new Error('package.json was not found above the program')
    folder = parent
  }
  return folder
}

const root = projectFolder()
const { version } = z
  .object({ version: z.string() })
  .parse(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')))

export const appVersion = version
export const pageFolder = join(root, 'out', 'renderer')
export const demoFolder = join(root, 'sample-images')
