// The log: what failed and where in the code, never what a customer said, a vehicle number, a note or a path.
import process from 'node:process'

export type Log = { error: (id: string, error: unknown) => void }

/** Keeps the error's type and the places in our code; message and paths may hold names. */
export function withoutPrivateText(error: unknown): string {
  if (!(error instanceof Error)) return typeof error
  const code = 'code' in error && typeof error.code === 'string' ? ` ${error.code}` : ''
  const frames = (error.stack ?? '')
    .split('\n')
    .filter(line => /^\s+at .*:\d+:\d+\)?$/.test(line))
    .slice(0, 6)
    .map(line => line.trim().replace(/\(?(?:file:\/\/)?[^\s()]*[\\/]([^\s()\\/]+:\d+:\d+)\)?$/, '($1)'))
  const cause = error.cause instanceof Error ? ` from ${withoutPrivateText(error.cause)}` : ''
  return `${error.name}${code} ${frames.join(' < ')}${cause}`
}

/** One line a fault: time, id, what is told of the error. */
export const logTo = (write: (line: string) => void): Log => ({
  error: (id, error) => write(`${new Date().toISOString()} ${id} ${withoutPrivateText(error)}\n`),
})

export const stderrLog: Log = logTo(line => process.stderr.write(line))
