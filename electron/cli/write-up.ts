// `plugtray write-up`: the report of one job as PDF.
import { lstat, open, rename, rm, writeFile } from 'node:fs/promises'
import { basename, resolve } from 'node:path'
import { audiences } from '../../shared/contract/contract.ts'
import { defaultSettings } from '../../shared/contract/settings-schema.ts'
import { appVersion } from '../places-on-disk.ts'
import { FaultError } from '../services/fault.ts'
import { openCatalogue } from '../services/store/catalogue.ts'
import { realDisk } from '../services/store/disk.ts'
import { writeUpPdf } from '../services/write-up/write-up-pdf.ts'
import { catalogueFolder } from './catalogue-folder.ts'
import { choice, type CliCommand, flag, text, UsageError } from './command-line.ts'
import { readJobFile } from './read-job.ts'

export const writeUpCommand: CliCommand = {
  name: 'write-up',
  summary: 'Print the report of a job as PDF.',
  usage: 'plugtray write-up JOB --out FILE.pdf [--for customer|shop] [--catalogue DIR] [--json]',
  examples: [
    'plugtray write-up job.json --out report.pdf',
    'plugtray write-up 3f1c... --out customer.pdf --for customer',
  ],
  optionHelp: [
    ['JOB', 'a JOB.json file, or the id of a job in the catalogue'],
    ['--out FILE.pdf', 'where to write; an existing file is replaced only if it is a PDF'],
    ['--for WHOM', 'shop (every reading) or customer (plain words); default shop'],
    ['--catalogue DIR', 'where the job and its photos are'],
    ['--json', 'print one JSON document on stdout and nothing else'],
  ],
  options: { out: { type: 'string' }, for: { type: 'string' }, catalogue: { type: 'string' } },
  async run({ values, positionals, terminal }) {
    const [name, ...more] = positionals
    const out = text(values, 'out')
    if (!name || more.length > 0) throw new UsageError('Name one job.')
    if (!out) throw new UsageError('Say where to write it: --out FILE.pdf.')
    const audience = choice(values, 'for', audiences) ?? 'shop'
    const folder = catalogueFolder(text(values, 'catalogue'), terminal.env)
    const hasCatalogue = await realDisk.isFolder(resolve(folder, 'jobs'))
    const isFile = (await realDisk.stamp(name)) !== null
    if (!isFile && !hasCatalogue)
      throw new FaultError('NOT_FOUND', {
        what: 'There is no such job file, and no catalogue to look in.',
        where: name,
        hint: 'Give a JOB.json, or --catalogue.',
      })
    const catalogue = hasCatalogue ? await openCatalogue(folder, { appVersion }) : null
    try {
      const job = isFile || !catalogue ? await readJobFile(name) : await catalogue.load(name)
      const settings = catalogue?.settings.get() ?? defaultSettings
      const { bytes } = await writeUpPdf(job, audience, settings, catalogue?.photos ?? null)
      await writeOut(out, bytes)
      if (flag(values, 'json'))
        terminal.out(`${JSON.stringify({ file: out, bytes: bytes.length, for: audience })}\n`)
      else terminal.err(`Written: ${out} (${Math.ceil(bytes.length / 1024)} KiB).\n`)
      return 0
    } finally {
      await catalogue?.photos.close()
      await catalogue?.close()
    }
  },
}

/** Writes beside the place and moves over, so that a failure leaves what was there; never through a link. */
async function writeOut(out: string, bytes: Uint8Array): Promise<void> {
  const refuse = (what: string, hint: string) =>
    new FaultError('REFUSED', { what, where: basename(out), hint })
  const there = await lstat(out).catch(() => null)
  if (there && !there.isFile())
    throw refuse('This is not a plain file; it was left alone.', 'Choose another name.')
  if (there && there.size > 0) {
    const file = await open(out)
    try {
      const { buffer } = await file.read(Buffer.alloc(5), 0, 5, 0)
      if (buffer.toString('latin1') !== '%PDF-')
        throw refuse('A file that is no PDF has this name; it was left alone.', 'Choose another name.')
    } finally {
      await file.close()
    }
  }
  const beside = `${out}.${process.pid}.tmp`
  try {
    await writeFile(beside, bytes, { flag: 'wx' })
    await rename(beside, out)
  } catch (error) {
    await rm(beside, { force: true })
    throw new FaultError(
      'DISK',
      {
        what: 'The report could not be written.',
        where: basename(out),
        hint: 'Check the folder, its permissions and the free space.',
      },
      { cause: error },
    )
  }
}
