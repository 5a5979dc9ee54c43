// `plugtray assess`: what the readings and tags of one job say, as far as it is built.
import { valueWords } from '../../shared/diagnosis/gauge-evidence.ts'
import { assess, type Assessment } from '../../shared/diagnosis/assessment.ts'
import { type CliCommand, flag, printable, UsageError } from './command-line.ts'
import { readJobFile } from './read-job.ts'

type Cause = Assessment['engine']['causes'][number]

export const assessCommand: CliCommand = {
  name: 'assess',
  summary: 'Judge the readings and tags of a job: verdicts, the condition map and likely causes.',
  usage: 'plugtray assess JOB.json [--json]',
  examples: ['plugtray assess job.json', 'plugtray assess job.json --json | jq .cylinders'],
  optionHelp: [['--json', 'print one JSON document on stdout and nothing else']],
  options: {},
  async run({ values, positionals, terminal }) {
    const [path, ...more] = positionals
    if (!path || more.length > 0) throw new UsageError('Name one JOB.json file.')
    const assessment = assess(await readJobFile(path))
    terminal.out(flag(values, 'json') ? `${JSON.stringify(assessment, null, 2)}\n` : asText(assessment))
    return 0
  },
}

function asText(assessment: Assessment): string {
  const lines = ['Cylinders']
  for (const { cylinder, state, evidence, causes } of assessment.cylinders) {
    lines.push(`  ${cylinder}  ${state}`)
    for (const { text } of evidence) lines.push(`       ${text}`)
    lines.push(...causes.map(cause => `       ${causeLine(cause)}`))
  }
  if (assessment.engine.causes.length > 0)
    lines.push('', 'Whole engine', ...assessment.engine.causes.map(cause => `  ${causeLine(cause)}`))
  if (assessment.tests.length > 0) lines.push('', 'Tests')
  for (const one of assessment.tests) {
    const where = one.cylinder === undefined ? '' : ` ${one.cylinder}`
    lines.push(
      `  ${one.test}${where}, ${one.stage}, ${one.rule} ${valueWords(one)}: ${one.verdict}. ${one.why} (limit: ${one.limit}) [${one.source}]`,
    )
  }
  if (assessment.flags.length > 0) lines.push('', 'Remarks', ...assessment.flags.map(one => `  ${one.text}`))
  return `${printableLines(lines)}\n`
}

/** Chance in percent, and what moved it most: factors on the odds. */
function causeLine({ cause, cylinders, probability, evidence }: Cause): string {
  const why = evidence
    .filter(one => Math.abs(one.weight) >= 0.5)
    .slice(0, 3)
    .map(
      ({ from, weight }) =>
        `${from} ${weight > 0 ? 'for' : 'against'}, ${Math.exp(Math.abs(weight)).toPrecision(2)} to 1`,
    )
  const where = cylinders ? ` (cylinders ${cylinders.join(', ')})` : ''
  return `likely cause: ${cause}${where}, ${Math.round(100 * probability)} %${why.length > 0 ? `: ${why.join('; ')}` : ''}`
}

const printableLines = (lines: string[]): string => lines.map(printable).join('\n')
