// `plugtray check`: verifies every hash and document of a catalogue; with --mend rebuilds what can be rebuilt.
import { appVersion } from '../places-on-disk.ts'
import { FaultError } from '../services/fault.ts'
import { checkCatalogue } from '../services/store/check.ts'
import { realDisk } from '../services/store/disk.ts'
import { takeLock } from '../services/store/lock.ts'
import { catalogueFolder } from './catalogue-folder.ts'
import { type CliCommand, flag, printable, text, UsageError } from './command-line.ts'
import { progressLine } from './progress.ts'

export const checkCommand: CliCommand = {
  name: 'check',
  summary: 'Verify every document and photo of a catalogue; rebuild its index and derived files.',
  usage: 'plugtray check [--catalogue DIR] [--mend] [--json]',
  examples: ['plugtray check', 'plugtray check --catalogue ./demo --mend --json'],
  optionHelp: [
    ['--catalogue DIR', 'the catalogue folder (else PLUGTRAY_CATALOGUE, else your data folder)'],
    ['--mend', 'rebuild the index and derived files; evidence is never touched'],
    ['--json', 'print one JSON document on stdout and nothing else'],
  ],
  options: { catalogue: { type: 'string' }, mend: { type: 'boolean' } },
  async run({ values, positionals, terminal }) {
    if (positionals.length > 0) throw new UsageError(`"${positionals[0]}" is not expected here.`)
    const folder = catalogueFolder(text(values, 'catalogue'), terminal.env)
    const progress = progressLine(terminal)
    const mend = flag(values, 'mend')
    const attempt =
      mend && (await realDisk.isFolder(folder)) ? await takeLock(realDisk, folder, appVersion) : null
    if (attempt && 'heldBy' in attempt)
      throw new FaultError('READ_ONLY', {
        what: 'The catalogue can only be read now.',
        where: '',
        hint: attempt.heldBy,
      })
    const report = await checkCatalogue(folder, {
      mend,
      signal: terminal.signal,
      onProgress: progress.step,
    }).finally(() => attempt?.lock.release())
    progress.end()
    const open = report.problems.filter(problem => !problem.mended)
    if (flag(values, 'json')) terminal.out(`${JSON.stringify(report, null, 2)}\n`)
    else {
      for (const { file, kind, what, hint, mended } of report.problems)
        terminal.out(`${printable(file)}: ${kind}. ${printable(what)} ${mended ? 'Mended.' : hint}\n`)
      terminal.out(
        `${report.jobs} jobs and ${report.photos} photos verified (${(report.bytesRead / 1e6).toFixed(1)} MB read): ${
          open.length === 0 ? 'no problem is left.' : `${open.length} to look at.`
        }\n`,
      )
    }
    return open.length === 0 ? 0 : 1
  },
}
