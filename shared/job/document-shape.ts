// A first look at foreign JSON before any schema sees it: nested too deep, or carrying a key that is never data.
import { done, refuse } from './refusal.ts'
import type { Outcome } from './refusal.ts'

/** A job is nested eight deep; this leaves room and keeps a hostile file from exhausting the stack. */
const deepest = 32

const inWords = (path: readonly (string | number)[]): string =>
  path.length === 0 ? 'top level' : path.join('.')

type Place = { value: unknown; path: readonly (string | number)[] }

/**
 * Refuses a `__proto__` key anywhere (JSON.parse makes it an ordinary field, and a later copy could turn it into
 * a prototype) and nesting beyond what any job has. Walks without recursion.
 */
export const checkShape = (raw: unknown): Outcome<unknown> => {
  const waiting: Place[] = [{ value: raw, path: [] }]
  for (let place = waiting.pop(); place !== undefined; place = waiting.pop()) {
    const { value, path } = place
    if (typeof value !== 'object' || value === null) continue
    if (path.length >= deepest)
      return refuse(
        `At ${inWords(path.slice(0, 4))}: nested more than ${deepest} deep.`,
        inWords(path.slice(0, 4)),
        'A job is never nested that deep: this is not a job, or it is damaged.',
      )
    const entries: [string | number, unknown][] = Array.isArray(value)
      ? value.map((item, i) => [i, item])
      : Object.entries(value)
    for (const [key, field] of entries) {
      if (key === '__proto__')
        return refuse(
          `At ${inWords([...path, key])}: a field of this name is never read.`,
          inWords([...path, key]),
          'Take the field out of the file.',
        )
      if (typeof field === 'object' && field !== null) waiting.push({ value: field, path: [...path, key] })
    }
  }
  return done(raw)
}
