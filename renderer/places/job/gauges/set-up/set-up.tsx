// Set-up and tester of a test, folded into one line that says what was noted.
import { conditionsOf } from '../../../../../shared/job/current.ts'
import type { TestKind } from '../../../../../shared/job/pull-schema.ts'
import { useJobPage } from '../../job-context.ts'
import { InstrumentPicker } from './instrument-picker.tsx'
import { SetUpBar } from './set-up-bar.tsx'
import { setUpChoices, setUpNumbers } from './set-up-fields.ts'
import type { InstrumentChoice } from './use-instrument.ts'

type SetUpProps = { test: TestKind; instrument: InstrumentChoice }

export function SetUp({ test, instrument }: SetUpProps) {
  const { job, tray } = useJobPage()
  const choices = setUpChoices[test] ?? []
  const numbers = setUpNumbers[test] ?? []
  if (choices.length + numbers.length === 0 && instrument.kind === undefined) return null
  const now = conditionsOf(job, test, tray.stage)
  const tester = instrument.known.find(one => one.id === instrument.chosen)
  const noted = [
    ...choices.flatMap(({ key, title, options }) => {
      const on = options.find(one => one.sets[key] === now[key])
      return on ? `${title.toLowerCase()} ${on.text}` : []
    }),
    ...numbers.flatMap(({ key, title, unit }) => {
      const value = now[key]
      return value === undefined ? [] : `${title.toLowerCase()} ${value}\u00a0${unit}`
    }),
    ...(tester ? [tester.name] : []),
  ]
  return (
    <details>
      <summary>
        Set-up and tester{' '}
        <span className="quiet">{noted.length === 0 ? 'nothing noted yet' : noted.join(', ')}</span>
      </summary>
      <div className="set-up">
        <SetUpBar test={test} />
        <InstrumentPicker choice={instrument} />
      </div>
    </details>
  )
}
