// From an argument list to an exit status: finds the command, shows help, turns failures into one clear line.
import { FaultError } from '../services/fault.ts'
import { assessCommand } from './assess.ts'
import { checkCommand } from './check.ts'
import {
  type CliCommand,
  type ExitStatus,
  helpText,
  parseCall,
  type Terminal,
  UsageError,
} from './command-line.ts'
import { demoCommand } from './demo.ts'
import { importCommand } from './import.ts'
import { serveCommand } from './serve.ts'
import { writeUpCommand } from './write-up.ts'

export const commands: readonly CliCommand[] = [
  importCommand,
  assessCommand,
  writeUpCommand,
  checkCommand,
  demoCommand,
  serveCommand,
]

const overview = (version: string): string =>
  [
    `plugtray ${version}: removed spark plugs in cylinder order, weighed with the gauge readings.`,
    '',
    'Examples:',
    '  plugtray demo --catalogue ./demo',
    '  plugtray import ./photos --layout i6-153624 --order firing --json',
    '  plugtray assess job.json --json',
    '',
    'Commands:',
    ...commands.map(command => `  ${command.name.padEnd(10)} ${command.summary}`),
    '',
    '`plugtray COMMAND --help` tells more. Exit status: 0 done, 1 could not, 2 wrong usage.',
    '',
  ].join('\n')

export async function runCommandLine(
  args: string[],
  terminal: Terminal,
  version: string,
): Promise<ExitStatus> {
  const [name, ...rest] = args
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    const about = commands.find(command => command.name === rest[0])
    terminal.out(about ? helpText(about) : overview(version))
    return name === undefined ? 2 : 0
  }
  if (name === '--version') {
    terminal.out(`${version}\n`)
    return 0
  }
  const command = commands.find(one => one.name === name)
  if (!command) {
    const near = nearest(name)
    terminal.err(`plugtray: there is no command "${name}".${near ? ` Did you mean "${near}"?` : ''}\n`)
    return 2
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    terminal.out(helpText(command))
    return 0
  }
  try {
    return await command.run({ ...parseCall(command, rest), terminal })
  } catch (error) {
    if (error instanceof UsageError) {
      terminal.err(`plugtray ${name}: ${error.message}\nUsage: ${command.usage}\n`)
      return 2
    }
    if (error instanceof FaultError) {
      terminal.err(`plugtray ${name}: ${sentence(error)}\n`)
      return 1
    }
    if (terminal.signal.aborted) {
      terminal.err(`plugtray ${name}: stopped; nothing of it was kept.\n`)
      return 1
    }
    throw error
  }
}

const sentence = (error: FaultError): string =>
  [error.fault.what, error.fault.where && `(${error.fault.where})`, error.fault.hint]
    .filter(Boolean)
    .join(' ')

/** The command within two edits of what was typed. */
function nearest(typed: string): string | undefined {
  const ranked = commands
    .map(({ name }) => ({ name, distance: editDistance(typed, name) }))
    .toSorted((a, b) => a.distance - b.distance)
  return ranked[0] && ranked[0].distance <= 2 ? ranked[0].name : undefined
}

function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, i) => i)
  for (const [i, letter] of Array.from(a).entries()) {
    const current = [i + 1]
    for (const [j, other] of Array.from(b).entries())
      current.push(
        Math.min(
          (previous[j + 1] ?? 0) + 1,
          (current[j] ?? 0) + 1,
          (previous[j] ?? 0) + (letter === other ? 0 : 1),
        ),
      )
    previous = current
  }
  return previous[b.length] ?? 0
}
