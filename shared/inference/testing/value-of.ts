// Takes the value out of an answer in a test, or fails with the problem's own words.
import type { Answer } from '../problem.ts'

export function valueOf<T>(answer: Answer<T>): T {
  if (answer.ok) return answer.value
  const { kind, where, what } = answer.problem
  throw new Error(`${kind}: ${where} ${what}`)
}
