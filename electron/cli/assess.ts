// `plugtray assess`: what the readings and tags of one job say, as far as it is built.
import { valueWords } from '../../shared/diagnosis/gauge-evidence.ts'
import { assess, type Assessment } from '../../shared/diagnosis/assessment.ts'
import { type CliCommand, flag, printable, UsageError } from './command-line.ts'
import { readJobFile } from './read-job.ts'

export const assessCommand: CliCommand = {
  name: 'assess',
  summary: 'Judge the readings and tags of a job: verdicts and the condition map.',
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
  for (const { cylinder, state, evidence } of assessment.cylinders) {
    lines.push(`  ${cylinder}  ${state}`)
    for (const { text } of evidence) lines.push(`       ${text}`)
  }
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

const printableLines = (lines: string[]): string => lines.map(printable).join('\n')
