// `plugtray serve`: the app in a browser, on this computer only.
import { serveBrowserHost } from '../http/serve.ts'
import { catalogueFolder } from './catalogue-folder.ts'
import { type CliCommand, flag, text, UsageError, wholeNumber } from './command-line.ts'

export const serveCommand: CliCommand = {
  name: 'serve',
  summary: 'Open the app in a browser on this computer.',
  usage: 'plugtray serve [--catalogue DIR] [--port N] [--no-open] [--json]',
  examples: ['plugtray serve', 'plugtray serve --catalogue ./demo --no-open'],
  optionHelp: [
    ['--catalogue DIR', 'the catalogue folder (else PLUGTRAY_CATALOGUE, else your data folder)'],
    ['--port N', 'a fixed port on 127.0.0.1; default any free one'],
    ['--no-open', 'print the address, open no window'],
    ['--json', 'print {"url"} as one JSON document on stdout'],
  ],
  options: { catalogue: { type: 'string' }, port: { type: 'string' }, 'no-open': { type: 'boolean' } },
  async run({ values, positionals, terminal }) {
    if (positionals.length > 0) throw new UsageError(`"${positionals[0]}" is not expected here.`)
    const host = await serveBrowserHost({
      folder: catalogueFolder(text(values, 'catalogue'), terminal.env),
      port: wholeNumber(values, 'port', 1, 65_535) ?? 0,
      open: !flag(values, 'no-open'),
    })
    terminal.out(
      flag(values, 'json') ? `${JSON.stringify({ url: host.link })}\n` : `Plugtray is at ${host.link}\n`,
    )
    if (!terminal.signal.aborted)
      await new Promise<void>(resolve => {
        terminal.signal.addEventListener('abort', () => resolve(), { once: true })
      })
    await host.close()
    return 0
  },
}
