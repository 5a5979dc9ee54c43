// What a command of the command line is: name, usage, options, and the run that returns an exit status.
import { parseArgs, type ParseArgsConfig } from 'node:util'

/** 0 done, 1 could not, 2 wrong usage. */
export type ExitStatus = 0 | 1 | 2

/** Where a command talks: results on `out`, everything else on `err`. */
export type Terminal = {
  out: (text: string) => void
  err: (text: string) => void
  signal: AbortSignal
  env: Record<string, string | undefined>
}

export type Options = NonNullable<ParseArgsConfig['options']>
export type Values = Record<string, string | boolean | (string | boolean)[] | undefined>

export type CliCommand = {
  name: string
  summary: string
  usage: string
  examples: readonly string[]
  /** One line an option, for the help. */
  optionHelp: readonly (readonly [option: string, meaning: string])[]
  options: Options
  run: (call: { values: Values; positionals: string[]; terminal: Terminal }) => Promise<ExitStatus>
}

/** Wrong usage: what was typed cannot mean anything. Exit 2. */
export class UsageError extends Error {}

const common: Options = { help: { type: 'boolean', short: 'h' }, json: { type: 'boolean' } }

export function helpText(command: CliCommand): string {
  const examples = command.examples.map(example => `  ${example}`)
  const width = Math.max(...command.optionHelp.map(([option]) => option.length), 0)
  const options = command.optionHelp.map(([option, meaning]) => `  ${option.padEnd(width)}  ${meaning}`)
  return [
    command.summary,
    '',
    'Examples:',
    ...examples,
    '',
    `Usage: ${command.usage}`,
    ...(options.length > 0 ? ['', ...options] : []),
    '',
  ].join('\n')
}

/** Parses strictly: an unknown option is wrong usage, not a guess. */
export function parseCall(command: CliCommand, args: string[]): { values: Values; positionals: string[] } {
  try {
    const { values, positionals } = parseArgs({
      args,
      options: { ...common, ...command.options },
      allowPositionals: true,
      strict: true,
    })
    return { values: { ...values }, positionals }
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error))
  }
}

export function text(values: Values, name: string): string | undefined {
  const value = values[name]
  return typeof value === 'string' ? value : undefined
}

export const flag = (values: Values, name: string): boolean => values[name] === true

/** A value out of a fixed list, or undefined when the option was not given. */
export function choice<T extends string>(values: Values, name: string, allowed: readonly T[]): T | undefined {
  const value = text(values, name)
  if (value === undefined) return undefined
  const found = allowed.find(one => one === value)
  if (!found) throw new UsageError(`--${name} takes ${allowed.join(' or ')}, not "${value}".`)
  return found
}

export function wholeNumber(values: Values, name: string, min: number, max: number): number | undefined {
  const value = text(values, name)
  if (value === undefined) return undefined
  const number = Number(value)
  if (!Number.isInteger(number) || number < min || number > max)
    throw new UsageError(`--${name} takes a whole number from ${min} to ${max}, not "${value}".`)
  return number
}

/** Names from disk may hold escape or direction-turning characters; a terminal must not obey them. */
export const printable = (value: string): string =>
  value.replace(
    // oxlint-disable-next-line no-control-regex -- control characters are what is looked for
    /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g,
    character => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
