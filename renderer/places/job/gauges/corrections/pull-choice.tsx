// Which pulls a correction is for: all, a run of them from one to another, all of one tester, or one by one.
import { useState } from 'react'
import { asCorrected } from '../../../../../shared/job/current.ts'
import type { Instrument } from '../../../../../shared/gauges/instrument-schema.ts'
import type { Pull } from '../../../../../shared/job/pull-schema.ts'
import { useUnits } from '../../../../api/use-settings.ts'
import { pullWords } from '../pull-words.ts'
import { whereOf } from './where-of.ts'

type PullChoiceProps = {
  pulls: readonly Pull[]
  instruments: readonly Instrument[]
  chosen: ReadonlySet<string>
  onChange: (chosen: ReadonlySet<string>) => void
}

export function PullChoice({ pulls, instruments, chosen, onChange }: PullChoiceProps) {
  const units = useUnits()
  const [from, setFrom] = useState(0)
  const [to, setTo] = useState(pulls.length - 1)
  const choose = (some: readonly Pull[]) => onChange(new Set(some.map(one => one.id)))
  const named = instruments.filter(one => pulls.some(pull => pull.instrument === one.id))
  const range = (label: string, spoken: string, value: number, set: (at: number) => void) => (
    <label>
      {label}{' '}
      <select aria-label={spoken} value={value} onChange={event => set(Number(event.target.value))}>
        {pulls.map((pull, at) => (
          <option key={pull.id} value={at}>
            {at + 1}
          </option>
        ))}
      </select>
    </label>
  )
  return (
    <fieldset className="correction-choice">
      <legend>
        Pulls to correct ({chosen.size} of {pulls.length})
      </legend>
      <div className="row">
        <button type="button" className="tag-filter" onClick={() => choose(pulls)}>
          All
        </button>
        <button type="button" className="tag-filter" onClick={() => choose([])}>
          None
        </button>
        {named.map(one => (
          <button
            key={one.id}
            type="button"
            className="tag-filter"
            onClick={() => choose(pulls.filter(pull => pull.instrument === one.id))}
          >
            Read with {one.name}
          </button>
        ))}
        {range('From', 'From pull', from, setFrom)}
        {range('to', 'To pull', to, setTo)}
        <button
          type="button"
          className="tag-filter"
          onClick={() => choose(pulls.slice(Math.min(from, to), Math.max(from, to) + 1))}
        >
          Choose these
        </button>
      </div>
      <ul className="correction-pulls">
        {pulls.map((pull, at) => (
          <li key={pull.id}>
            <label>
              <input
                type="checkbox"
                checked={chosen.has(pull.id)}
                onChange={event => {
                  const next = new Set(chosen)
                  if (event.target.checked) next.add(pull.id)
                  else next.delete(pull.id)
                  onChange(next)
                }}
              />{' '}
              <span className="number">
                {at + 1}. {whereOf(pull)}: {pullWords(asCorrected(pull), units)}
              </span>
            </label>
          </li>
        ))}
      </ul>
    </fieldset>
  )
}
