// The page imports these modules: none of them may pull the validator in at run time, by whatever way round.
import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'

const pageModules = [
  'apply-command.ts',
  'canonical.ts',
  'capture-order.ts',
  'check-job.ts',
  'command-label.ts',
  'current.ts',
  'fill-plan.ts',
  'history.ts',
  'limits.ts',
  'new-job.ts',
  'summary.ts',
]

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
  it.each(pageModules)('%s reaches no validator', name => {
    expect([...reached(join(import.meta.dirname, name))]).not.toContain('zod')
  })

  it('are checked in a way that would notice one', () => {
    expect([...reached(join(import.meta.dirname, 'parse-job.ts'))]).toContain('zod')
  })
})
