// `plugtray demo`: puts the invented demonstration jobs into a catalogue.
import { demoFolder, appVersion } from '../places-on-disk.ts'
import { loadDemo } from '../services/demo/load-demo.ts'
import { FaultError } from '../services/fault.ts'
import { openCatalogue } from '../services/store/catalogue.ts'
import { catalogueFolder } from './catalogue-folder.ts'
import { type CliCommand, flag, text, UsageError } from './command-line.ts'
import { progressLine } from './progress.ts'

export const demoCommand: CliCommand = {
  name: 'demo',
  summary: 'Put the invented demonstration jobs into a catalogue.',
  usage: 'plugtray demo [--catalogue DIR] [--json]',
  examples: ['plugtray demo --catalogue ./demo', 'plugtray serve --catalogue ./demo'],
  optionHelp: [
    ['--catalogue DIR', 'the catalogue folder (else PLUGTRAY_CATALOGUE, else your data folder)'],
    ['--json', 'print one JSON document on stdout and nothing else'],
  ],
  options: { catalogue: { type: 'string' } },
  async run({ values, positionals, terminal }) {
    if (positionals.length > 0) throw new UsageError(`"${positionals[0]}" is not expected here.`)
    const catalogue = await openCatalogue(catalogueFolder(text(values, 'catalogue'), terminal.env), {
      appVersion,
    })
    const progress = progressLine(terminal)
    try {
      if (catalogue.readOnly !== null)
        throw new FaultError('READ_ONLY', {
          what: 'The catalogue can only be read now.',
          where: '',
          hint: catalogue.readOnly,
        })
      const jobs = await loadDemo({
        folder: demoFolder,
        catalogue,
        signal: terminal.signal,
        onProgress: progress.step,
      })
      progress.end()
      if (flag(values, 'json')) terminal.out(`${JSON.stringify({ jobs })}\n`)
      else terminal.out(`${jobs.length} invented jobs added.\n`)
      return 0
    } finally {
      progress.end()
      await catalogue.photos.close()
      await catalogue.close()
    }
  },
}
