// The cause that was found, what was done about it, and a note for the reader.
import { useState } from 'react'
import type { Audience } from '../../../../shared/writeup/write-up.ts'
import { useJobPage } from '../job-context.ts'

export function RepairFields({ audience }: { audience: Audience }) {
  const { job, apply, readOnly } = useJobPage()
  const note = (audience === 'shop' ? job.writeUp.noteForShop : job.writeUp.noteForCustomer) ?? ''
  const setRepair = (cause: string, done: string) => {
    if (cause === (job.repair?.cause ?? '') && done === (job.repair?.done ?? '')) return
    const confirmed = job.repair?.confirmed
    const repair =
      cause === '' && done === ''
        ? null
        : { done, ...(cause === '' ? {} : { cause }), ...(confirmed && { confirmed }) }
    void apply({ command: 'set repair', repair })
  }
  const setNote = (text: string) => {
    if (text === note) return
    const { noteForShop, noteForCustomer, shots } = job.writeUp
    const notes = {
      noteForShop,
      noteForCustomer,
      [audience === 'shop' ? 'noteForShop' : 'noteForCustomer']: text,
    }
    void apply({
      command: 'set write-up',
      writeUp: {
        shots,
        ...(notes.noteForShop ? { noteForShop: notes.noteForShop } : {}),
        ...(notes.noteForCustomer ? { noteForCustomer: notes.noteForCustomer } : {}),
      },
    })
  }
  return (
    <div className="repair-fields">
      <Text
        label="Cause found"
        value={job.repair?.cause ?? ''}
        limit={400}
        disabled={readOnly}
        onKeep={text => setRepair(text, job.repair?.done ?? '')}
      />
      <Text
        label="Work done"
        value={job.repair?.done ?? ''}
        limit={4000}
        disabled={readOnly}
        onKeep={text => setRepair(job.repair?.cause ?? '', text)}
      />
      <Text
        key={audience}
        label={`Note for the ${audience}`}
        value={note}
        limit={4000}
        disabled={readOnly}
        onKeep={setNote}
      />
    </div>
  )
}

type TextProps = {
  label: string
  value: string
  limit: number
  disabled: boolean
  onKeep: (text: string) => void
}

function Text({ label, value, limit, disabled, onKeep }: TextProps) {
  const [typed, setTyped] = useState<string>()
  return (
    <label className="field">
      <span className="field-label">{label}</span>
      <textarea
        rows={2}
        maxLength={limit}
        disabled={disabled}
        value={typed ?? value}
        onChange={event => setTyped(event.target.value)}
        onBlur={() => {
          if (typed !== undefined) onKeep(typed.trim())
          setTyped(undefined)
        }}
      />
    </label>
  )
}
