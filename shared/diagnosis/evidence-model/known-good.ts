// Answers of the inference engine to questions that the model itself poses: a problem there is a defect, never the job's.
import type { Answer } from '../../inference/problem.ts'

/** The value; throws where our own network or evidence is malformed. */
export function valueOrThrow<T>(answer: Answer<T>): T {
  if (answer.ok) return answer.value
  throw new Error(`Evidence model: ${JSON.stringify(answer.problem)}`)
}
