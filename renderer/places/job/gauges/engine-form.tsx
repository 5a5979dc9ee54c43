// A short form for a test of the whole engine. Enter goes through its fields; after the last one the entry is kept.
import { useRef, useState } from 'react'
import type { Pull } from '../../../../shared/job/pull-schema.ts'
import { useUnits } from '../../../api/use-settings.ts'
import { Button } from '../../../parts/button.tsx'
import { useJobPage } from '../job-context.ts'
import type { DefineEngineTest } from './engine-tests/engine-test.ts'
import { isWrong, type Typed } from './entry/field.ts'
import { FormField } from './entry/form-field.tsx'
import { firstField, nextField } from './entry/walk.ts'
import { PullChips } from './pull-chips.tsx'
import { pullWords } from './pull-words.ts'
import { pullsAt } from './pulls-on.ts'

type EngineFormProps = { define: DefineEngineTest; instrument: string | undefined }

export function EngineForm({ define, instrument }: EngineFormProps) {
  const { job, tray, apply, readOnly } = useJobPage()
  const units = useUnits()
  const test = define(units)
  const [typed, setTyped] = useState<Typed>(test.initial)
  const [problem, setProblem] = useState<string>()
  const form = useRef<HTMLDivElement>(null)
  const fields = test.fields(typed)

  const keep = () => {
    const shown = Object.fromEntries(fields.map(({ name }) => [name, typed[name] ?? '']))
    const pull = test.pull(shown, {
      id: crypto.randomUUID(),
      stage: tray.stage,
      at: new Date().toISOString(),
      ...(instrument === undefined ? {} : { instrument }),
    })
    const wrong = fields.find(field => isWrong(field, typed[field.name]))
    if (wrong) return setProblem(`${wrong.title}: this cannot be read.`)
    if (!pull || typeof pull === 'string') return setProblem(pull ?? test.needs)
    setProblem(undefined)
    setTyped({
      ...test.initial,
      ...Object.fromEntries(test.stays.map(name => [name, typed[name] ?? ''])),
    })
    firstField(form.current)
    void send(pull, typed)
  }
  const send = async (pull: Pull, before: Typed) => {
    if (!(await apply({ command: 'add pull', pull }))) setTyped(before)
  }
  return (
    <section className="engine-form" aria-label="New entry">
      <div className="form-fields" data-walk ref={form}>
        {fields.map((field, at) => (
          <FormField
            key={field.name}
            field={field}
            value={typed[field.name] ?? ''}
            disabled={readOnly}
            onChange={text => setTyped(now => ({ ...now, [field.name]: text }))}
            onEnter={from => {
              if (isWrong(field, typed[field.name])) return
              if (at === fields.length - 1) keep()
              else nextField(from)
            }}
          />
        ))}
      </div>
      <div className="row">
        <Button kind="main" onPress={keep} isDisabled={readOnly}>
          {test.keepWords}
        </Button>
        {problem && (
          <p className="field-error" role="alert">
            {problem}
          </p>
        )}
      </div>
      <PullChips pulls={pullsAt(job, test.test, tray.stage)} label={pull => pullWords(pull, units)} />
    </section>
  )
}
