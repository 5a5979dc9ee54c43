// The command line: the same services as the window, from a shell.
import { readFileSync } from 'node:fs'
import process from 'node:process'
import { z } from 'zod'
import { runCommandLine } from './cli/run.ts'

const packageSchema = z.object({ version: z.string() })
const { version } = packageSchema.parse(
  JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')),
)

const stop = new AbortController()
process.once('SIGINT', () => stop.abort())
process.once('SIGTERM', () => stop.abort())
// A reader such as `head` may close the pipe early; that is no fault of ours.
process.stdout.on('error', error => {
  if ('code' in error && error.code === 'EPIPE') process.exit(0)
  throw error
})

process.exitCode = await runCommandLine(
  process.argv.slice(2),
  {
    out: text => process.stdout.write(text),
    err: text => process.stderr.write(text),
    signal: stop.signal,
    env: process.env,
  },
  version,
)
