// The command line: the same services as the window, from a shell.
import process from 'node:process'
import { runCommandLine } from './cli/run.ts'
import { appVersion } from './places-on-disk.ts'

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
  appVersion,
)
