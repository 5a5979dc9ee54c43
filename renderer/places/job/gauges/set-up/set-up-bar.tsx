// How the test was set up, once for each test and stage: quick toggles, and battery and speed where cranking counts.
import type { TestConditions } from '../../../../../shared/gauges/conditions-schema.ts'
import { conditionsOf } from '../../../../../shared/job/current.ts'
import type { TestKind } from '../../../../../shared/job/pull-schema.ts'
import { useJobPage } from '../../job-context.ts'
import { setUpChoices, setUpNumbers } from './set-up-fields.ts'
import { SetUpNumber } from './set-up-number.tsx'

export function SetUpBar({ test }: { test: TestKind }) {
  const { job, tray, apply, readOnly } = useJobPage()
  const choices = setUpChoices[test] ?? []
  const numbers = setUpNumbers[test] ?? []
  const now = conditionsOf(job, test, tray.stage)
  const set = (key: keyof TestConditions, change: TestConditions) => {
    const { [key]: _, ...others } = now
    void apply({
      command: 'set up test',
      test,
      stage: tray.stage,
      conditions: { ...others, ...change },
    })
  }
  return (
    <div className="set-up" role="group" aria-label="Set-up">
      {choices.map(({ key, title, options }) => (
        <div key={key} className="choice">
          <span className="field-label">{title}</span>
          <div className="choice-buttons" role="group" aria-label={title}>
            {options.map(({ text, sets }) => {
              const isOn = sets[key] === now[key]
              return (
                <button
                  key={text}
                  type="button"
                  className="tag-filter"
                  aria-pressed={isOn}
                  disabled={readOnly}
                  onClick={() => set(key, isOn ? {} : sets)}
                >
                  {text}
                </button>
              )
            })}
          </div>
        </div>
      ))}
      {numbers.map(({ key, title, unit, parse }) => (
        <SetUpNumber
          key={key}
          {...{ title, unit, parse }}
          value={now[key]}
          isDisabled={readOnly}
          onKeep={value => set(key, value === undefined ? {} : { [key]: value })}
        />
      ))}
    </div>
  )
}
