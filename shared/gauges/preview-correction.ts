// What a correction would do before it is made: each pull before and after, and every verdict that would change.
import type { CorrectionHow } from './correction-schema.ts'
import { correctPull } from './correct-entry.ts'
import { judgeAll } from './gauges.ts'
import type { ShownUnits } from './shown.ts'
import type { GaugeVerdict } from './verdict.ts'
import type { Job } from '../job/job-schema.ts'
import { limits } from '../job/limits.ts'
import type { Pull } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'

export type VerdictChange = { where: string; rule: string; before: string; after: string }

export type CorrectionPreview = {
  /** Those that the correction alters. */
  pulls: { before: Pull; after: Pull }[]
  /** Chosen, but with nothing in them that it would alter, or corrected as often as can be. */
  untouched: Pull[]
  changes: VerdictChange[]
}

const because = { reason: 'preview', at: '2000-01-01T00:00:00.000Z' }

/** Whether a misread gauge can have spoilt this pull: it holds a pressure or a vacuum. */
export const isCorrectable = (pull: Pull): boolean =>
  correctPull(pull, { how: { kind: 'offset', add: 1 }, ...because }).ok

/** Changes of every test are told, since one gauge's readings may bear on another's verdict. */
export function previewCorrection(
  job: Job,
  stage: Stage,
  chosen: ReadonlySet<string>,
  how: CorrectionHow,
  units: ShownUnits,
): CorrectionPreview {
  const pulls: CorrectionPreview['pulls'] = []
  const untouched: Pull[] = []
  for (const before of job.pulls.filter(one => chosen.has(one.id))) {
    const outcome = correctPull(before, { how, ...because })
    if (outcome.ok && (before.corrections?.length ?? 0) < limits.correctionsPerPull)
      pulls.push({ before, after: outcome.value })
    else untouched.push(before)
  }
  const after = new Map(pulls.map(one => [one.before.id, one.after]))
  const then = { ...job, pulls: job.pulls.map(one => after.get(one.id) ?? one) }
  const changes =
    pulls.length === 0 ? [] : changesOf(judgeAll(job, stage, units), judgeAll(then, stage, units))
  return { pulls, untouched, changes }
}

/** Verdicts that differ by word; a value that moves inside the same verdict is seen in the readings. */
export function changesOf(before: readonly GaugeVerdict[], after: readonly GaugeVerdict[]): VerdictChange[] {
  const then = keyed(after)
  const now = keyed(before)
  return [...new Set([...now.keys(), ...then.keys()])].flatMap(key => {
    const [a, b] = [now.get(key), then.get(key)]
    const either = a ?? b
    if (either === undefined || a?.verdict === b?.verdict) return []
    return [
      {
        where: either.cylinder === undefined ? 'Engine' : `Cylinder ${either.cylinder}`,
        rule: `${either.test}, ${either.rule}`,
        before: a?.verdict ?? 'no verdict',
        after: b?.verdict ?? 'no verdict',
      },
    ]
  })
}

/** One rule may speak of a cylinder more than once, so its turn is part of the key. */
function keyed(verdicts: readonly GaugeVerdict[]): Map<string, GaugeVerdict> {
  const found = new Map<string, GaugeVerdict>()
  const turns = new Map<string, number>()
  for (const one of verdicts) {
    const key = `${one.test}|${one.rule}|${one.cylinder ?? ''}|${one.about ?? ''}`
    const turn = (turns.get(key) ?? 0) + 1
    turns.set(key, turn)
    found.set(`${key}|${turn}`, one)
  }
  return found
}
