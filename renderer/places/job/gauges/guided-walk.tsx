// The guided walk: one cylinder at a time in large digits, with next and previous; the grid is one press away.
import { ArrowLeft, ArrowRight } from 'lucide-react'
import { useEffect, useRef, useState } from 'react'
import { useUnits } from '../../../api/use-settings.ts'
import { Button } from '../../../parts/button.tsx'
import { Segmented } from '../../../parts/segmented.tsx'
import { useJobPage } from '../job-context.ts'
import { isWrong } from './entry/field.ts'
import { FormField } from './entry/form-field.tsx'
import { firstField, nextField } from './entry/walk.ts'
import { PullChips } from './pull-chips.tsx'
import { pullWords } from './pull-words.ts'
import { pullsOn } from './pulls-on.ts'
import type { TypedCylinders } from './use-typed-cylinders.ts'

const counts = ['1', '2', '3'] as const

export function GuidedWalk({ entry }: { entry: TypedCylinders }) {
  const { job, tray, order, select, readOnly } = useJobPage()
  const units = useUnits()
  const { test, columns } = entry
  const cylinders = [...new Set(order.map(slot => slot.cylinder))]
  const made = (cylinder: number) =>
    pullsOn(job, test.test, tray.stage, cylinder).filter(pull => pull.voided === undefined).length
  const [each, setEach] = useState(test.pullsEach)
  const [cylinder, setCylinder] = useState(
    () => cylinders.find(one => made(one) < test.pullsEach) ?? cylinders[0] ?? 1,
  )
  const fields = useRef<HTMLDivElement>(null)
  const place = Math.max(0, cylinders.indexOf(cylinder))
  const done = cylinders.filter(one => made(one) >= each).length

  const goTo = (at: number) => {
    const next = cylinders[at]
    if (next === undefined) return
    setCylinder(next)
    const slot = order.find(one => one.cylinder === next)
    if (slot) select(slot, 'only')
    firstField(fields.current)
  }
  useEffect(() => firstField(fields.current), [])

  const keep = () => {
    if (!entry.keep(cylinder)) return
    if (made(cylinder) + 1 >= each) goTo(place + 1)
    firstField(fields.current)
  }
  return (
    <section className="guided" aria-label="Guided walk">
      <div className="row">
        <p className="guided-cylinder">
          Cylinder <strong>{cylinder}</strong>
        </p>
        <p className="guided-progress" role="status">
          {place + 1} of {cylinders.length}; {made(cylinder)} of {each} {each === 1 ? 'pull' : 'pulls'} made
          here; {done} of {cylinders.length} cylinders done
        </p>
        <span className="grow" />
        <Segmented
          label="Pulls on each cylinder"
          labelShown
          value={counts.find(one => one === String(each)) ?? '1'}
          options={counts.map(value => ({ value, text: value }))}
          onChange={value => setEach(Number(value))}
        />
      </div>
      <div className="guided-fields" data-walk ref={fields}>
        {columns.map((column, at) => {
          const value = entry.row(cylinder)[column.name] ?? ''
          return (
            <FormField
              key={column.name}
              field={column}
              of={`cylinder ${cylinder}`}
              value={value}
              disabled={readOnly}
              onChange={text => entry.type(cylinder, column.name, text)}
              onEnter={from => {
                if (isWrong(column, value)) return
                if (at === columns.length - 1) keep()
                else nextField(from)
              }}
            />
          )
        })}
      </div>
      <div className="row guided-steps">
        <Button onPress={() => goTo(place - 1)} isDisabled={place === 0}>
          <ArrowLeft aria-hidden="true" /> Previous
        </Button>
        <Button kind="main" onPress={keep} isDisabled={readOnly}>
          Keep the pull
        </Button>
        <Button onPress={() => goTo(place + 1)} isDisabled={place === cylinders.length - 1}>
          Next <ArrowRight aria-hidden="true" />
        </Button>
        <PullChips
          pulls={pullsOn(job, test.test, tray.stage, cylinder)}
          label={pull => pullWords(pull, units)}
        />
      </div>
      <ol className="guided-order" aria-label="Cylinders in this order">
        {cylinders.map((one, at) => (
          <li key={one}>
            <button
              type="button"
              className="tag-filter"
              aria-current={one === cylinder ? 'step' : undefined}
              onClick={() => goTo(at)}
            >
              <span className="visually-hidden">Cylinder </span>
              <strong>{one}</strong> {made(one) >= each ? '✓' : `${made(one)}/${each}`}
            </button>
          </li>
        ))}
      </ol>
    </section>
  )
}
