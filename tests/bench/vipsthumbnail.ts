// The baseline of the intake bench: libvips' own command line making the same two sizes of the same files.
import { execFile } from 'node:child_process'
import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { promisify } from 'node:util'

const run = promisify(execFile)
/** The same encoding as the intake's. */
const jpeg = '[Q=85,subsample_mode=off,strip]'

export async function vipsVersion(): Promise<string | null> {
  try {
    return (await run('vips', ['--version'])).stdout.trim()
  } catch {
    return null
  }
}

async function one(files: readonly string[], edge: number, out: string, threads: number): Promise<void> {
  const args = ['--size', `${edge}x${edge}>`, '-o', join(out, `%s-${edge}.jpg${jpeg}`), ...files]
  await run('vipsthumbnail', args, { env: { ...process.env, VIPS_CONCURRENCY: String(threads) } })
}

const split = (files: readonly string[], parts: number): string[][] =>
  Array.from({ length: parts }, (_, part) => files.filter((_, i) => i % parts === part))

export type Variant = { name: string; run: (files: readonly string[], out: string) => Promise<void> }

/** A process a core, each making both sizes of its share from the originals. */
const aProcessACore = (cores: number): Variant => ({
  name: `vipsthumbnail, ${cores} processes, both sizes from the original`,
  run: async (files, out) => {
    await mkdir(out, { recursive: true })
    await Promise.all(
      split(files, cores).map(async share => {
        await one(share, 1600, out, 1)
        await one(share, 320, out, 1)
      }),
    )
  },
})

/** As a careful person would script it: the small one from the large one. */
const chained = (cores: number): Variant => ({
  name: `vipsthumbnail, ${cores} processes, small size from the large one`,
  run: async (files, out) => {
    await mkdir(out, { recursive: true })
    await Promise.all(
      split(files, cores).map(async share => {
        await one(share, 1600, out, 1)
        const large = share.map(file =>
          join(
            out,
            `${file
              .split('/')
              .at(-1)
              ?.replace(/\.jpg$/, '')}-1600.jpg`,
          ),
        )
        await one(large, 320, out, 1)
      }),
    )
  },
})

const oncePerSize = (cores: number): Variant => ({
  name: `vipsthumbnail once per size, its own ${cores} threads`,
  run: async (files, out) => {
    await mkdir(out, { recursive: true })
    await one(files, 1600, out, cores)
    await one(files, 320, out, cores)
  },
})

export const variants = (cores: number): Variant[] => [
  aProcessACore(cores),
  chained(cores),
  oncePerSize(cores),
]
