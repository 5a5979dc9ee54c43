// Observations: each one yes, no, or not looked. A changed answer voids the one before, which stays on record.
import type { ObservationKind } from '../../../../shared/gauges/observation-entry.ts'
import { validPulls } from '../../../../shared/job/current.ts'
import { useUnits } from '../../../api/use-settings.ts'
import { Segmented } from '../../../parts/segmented.tsx'
import { useJobPage } from '../job-context.ts'
import { observationGroups } from './observation-words.ts'
import { PullChips } from './pull-chips.tsx'
import { pullWords } from './pull-words.ts'
import { pullsAt } from './pulls-on.ts'

const answers = ['yes', 'no', 'not looked'] as const
type Answer = (typeof answers)[number]

export function Observations() {
  const { job, tray, apply, readOnly } = useJobPage()
  const units = useUnits()
  const standing = validPulls(job, 'observation', tray.stage)
  const answerOf = (seen: ObservationKind): Answer =>
    standing.findLast(pull => pull.entry.seen === seen)?.entry.answer ?? 'not looked'

  const set = async (seen: ObservationKind, answer: Answer) => {
    for (const pull of standing.filter(one => one.entry.seen === seen))
      await apply({ command: 'void pull', pullId: pull.id, reason: `now: ${answer}` })
    if (answer === 'not looked') return
    await apply({
      command: 'add pull',
      pull: {
        id: crypto.randomUUID(),
        test: 'observation',
        stage: tray.stage,
        at: new Date().toISOString(),
        entry: { seen, answer },
      },
    })
  }
  return (
    <>
      {observationGroups.map(group => (
        <section key={group.title} className="observations" aria-label={group.title}>
          <h3>{group.title}</h3>
          {group.kinds.map(seen => (
            <div key={seen} className="observation">
              <Segmented
                label={seen}
                labelShown
                value={answerOf(seen)}
                options={answers.map(value => ({ value, text: value }))}
                isDisabled={readOnly}
                onChange={answer => void set(seen, answer)}
              />
            </div>
          ))}
        </section>
      ))}
      <details>
        <summary>All answers, with those taken back</summary>
        <PullChips pulls={pullsAt(job, 'observation', tray.stage)} label={pull => pullWords(pull, units)} />
      </details>
    </>
  )
}
