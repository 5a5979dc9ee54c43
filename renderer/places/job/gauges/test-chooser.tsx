// Chooses the test: all of them in groups, each with how many readings it has and whether any lies outside.
import type { KeyboardEvent } from 'react'
import type { GaugeVerdict } from '../../../../shared/gauges/verdict.ts'
import type { TestKind } from '../../../../shared/job/pull-schema.ts'
import { StateGlyph } from '../../../parts/state-glyph.tsx'
import { useJobPage } from '../job-context.ts'
import { pullsAt } from './pulls-on.ts'
import { shortTitle, testGroups } from './test-groups.ts'

type TestChooserProps = {
  value: TestKind
  verdicts: readonly GaugeVerdict[]
  onChange: (test: TestKind) => void
}

/** One stop for Tab; arrows move from test to test, Enter or Space chooses. */
function onKeyDown(event: KeyboardEvent<HTMLDivElement>): void {
  const move = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key]
  if (move === undefined || !(event.target instanceof HTMLButtonElement)) return
  event.preventDefault()
  const buttons = [...event.currentTarget.querySelectorAll('button')]
  buttons.at((buttons.indexOf(event.target) + move) % buttons.length)?.focus()
}

export function TestChooser({ value, verdicts, onChange }: TestChooserProps) {
  const { job, tray } = useJobPage()
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- arrows move between the buttons inside
    <div className="test-chooser" role="group" aria-label="Test" onKeyDown={onKeyDown}>
      {testGroups.map(group => (
        <div key={group.title} className="test-group" role="group" aria-label={group.title}>
          <div className="test-group-tests">
            {group.tests.map(test => {
              const count = pullsAt(job, test, tray.stage).filter(pull => pull.voided === undefined).length
              const isOutside = verdicts.some(one => one.test === test && one.verdict === 'outside')
              return (
                <button
                  key={test}
                  type="button"
                  className="tag-filter"
                  aria-pressed={test === value}
                  tabIndex={test === value ? 0 : -1}
                  onClick={() => onChange(test)}
                >
                  {shortTitle(test)}
                  {count > 0 && (
                    <small>
                      {isOutside && <StateGlyph state="fault" size={12} />}
                      {isOutside ? 'outside' : count}
                    </small>
                  )}
                </button>
              )
            })}
          </div>
        </div>
      ))}
    </div>
  )
}
