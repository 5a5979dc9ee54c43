// The page imports engine and units at run time: nothing there but the schemas may pull the validator in.
import { readdirSync, readFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'

const folders = [import.meta.dirname, join(import.meta.dirname, '..', 'units')]
const files = folders.flatMap(folder =>
  readdirSync(folder)
    .filter(name => name.endsWith('.ts') && !name.endsWith('.test.ts'))
    .map(name => join(folder, name)),
)
const isSchema = (file: string) => /(-schema|quantity)\.ts$/.test(file)

/** Specifiers of the imports and re-exports that stay when types are stripped. */
const importsOf = (file: string): string[] =>
  [...readFileSync(file, 'utf8').matchAll(/^(?:import|export) (?!type\b)[^'"]*?from '([^']+)'/gm)].flatMap(
    match => match[1] ?? [],
  )

const reached = (file: string, seen = new Set<string>()): Set<string> => {
  for (const specifier of importsOf(file)) {
    const target = specifier.startsWith('.') ? join(dirname(file), specifier) : specifier
    if (seen.has(target)) continue
    seen.add(target)
    if (specifier.startsWith('.')) reached(target, seen)
  }
  return seen
}

describe('modules for the page', () => {
  it.each(files.filter(file => !isSchema(file)).map(file => [basename(file), file] as const))(
    '%s reaches no validator',
    (_, file) => {
      expect([...reached(file)]).not.toContain('zod')
    },
  )
  it.each(files.filter(isSchema).map(file => [basename(file), file] as const))(
    '%s is noticed to reach it',
    (_, file) => {
      expect([...reached(file)]).toContain('zod')
    },
  )
})
