// The log: what failed and where in the code, never what a customer said, a vehicle number, a note or a path.

export type Log = {
  error: (id: string, error: unknown) => void
  info: (text: string) => void
}

/** Keeps the error's type and the places in our code; message and paths may hold names. */
export function withoutPrivateText(error: unknown): string {
  if (!(error instanceof Error)) return typeof error
  const code = 'code' in error ? ` ${String(error.code)}` : ''
  const frames = (error.stack ?? '')
    .split('\n')
    .filter(line => /^\s+at /.test(line))
    .slice(0, 6)
    .map(line => line.trim().replace(/\(?(?:file:\/\/)?[^\s()]*[\\/]([^\s()\\/]+:\d+:\d+)\)?/, '($1)'))
  return `${error.name}${code} ${frames.join(' < ')}`
}

export const stderrLog: Log = {
  error: (id, error) =>
    process.stderr.write(`${new Date().toISOString()} ${id} ${withoutPrivateText(error)}\n`),
  info: text => process.stderr.write(`${text}\n`),
}
