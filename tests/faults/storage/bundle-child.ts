// Bundles a child program of the storage tests, so that Node runs it as a process of its own.
import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { build } from 'vite'

const here = import.meta.dirname
const root = join(here, '..', '..', '..')

export type Bundle = { file: string; remove: () => void }

/** Under node_modules, where the packages that stay outside the bundle are found. */
export async function bundleChild(name: string): Promise<Bundle> {
  const cache = join(root, 'node_modules', '.cache')
  mkdirSync(cache, { recursive: true })
  const outDir = mkdtempSync(join(cache, 'plugtray-child-'))
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    build: {
      ssr: join(here, 'children', `${name}.ts`),
      outDir,
      target: 'node20',
      minify: false,
      rolldownOptions: { output: { entryFileNames: `${name}.mjs` } },
    },
  })
  return {
    file: join(outDir, `${name}.mjs`),
    remove: () => rmSync(outDir, { recursive: true, force: true }),
  }
}

export type Child = {
  process: ChildProcess
  /** Its next line, or null when it has ended. */
  line: () => Promise<string | null>
  tell: (line: string) => void
  /** When it has ended and all its lines are in. */
  ended: Promise<void>
}

export function startChild({ file }: Bundle, ...given: string[]): Child {
  const child = spawn(process.execPath, [file, ...given], { stdio: ['pipe', 'pipe', 'inherit'] })
  const lines = createInterface({ input: child.stdout })
  const waiting: ((line: string | null) => void)[] = []
  const ready: string[] = []
  let isOver = false
  lines.on('line', line => {
    const next = waiting.shift()
    if (next) next(line)
    else ready.push(line)
  })
  const ended = new Promise<void>(resolve => {
    child.once('close', () => {
      isOver = true
      for (const next of waiting.splice(0)) next(null)
      resolve()
    })
  })
  return {
    process: child,
    line: () => {
      const line = ready.shift()
      if (line !== undefined) return Promise.resolve(line)
      return isOver ? Promise.resolve(null) : new Promise(resolve => waiting.push(resolve))
    },
    tell: line => child.stdin.write(`${line}\n`),
    ended,
  }
}
