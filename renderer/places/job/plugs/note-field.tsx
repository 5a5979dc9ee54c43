// A note on one plug. Sent when the field is left or after a short pause in typing, so that little is ever at risk.
import { useEffect, useId, useRef, useState } from 'react'

const pauseMs = 300

type NoteFieldProps = { note: string; disabled: boolean; onChange: (note: string) => void }

export function NoteField({ note, disabled, onChange }: NoteFieldProps) {
  const id = useId()
  const field = useRef<HTMLTextAreaElement>(null)
  const [typed, setTyped] = useState(note)
  const timer = useRef<number | undefined>(undefined)
  useEffect(() => () => window.clearTimeout(timer.current), [])
  // Undo, or another window, may change the note while nobody types here.
  useEffect(() => {
    if (document.activeElement !== field.current) setTyped(note)
  }, [note])
  const send = (text: string) => {
    window.clearTimeout(timer.current)
    if (text !== note) onChange(text)
  }
  return (
    <div className="tag-group">
      <label htmlFor={id}>Note</label>
      <textarea
        ref={field}
        id={id}
        rows={2}
        maxLength={2000}
        value={typed}
        disabled={disabled}
        spellCheck={false}
        onChange={event => {
          const text = event.target.value
          setTyped(text)
          window.clearTimeout(timer.current)
          timer.current = window.setTimeout(() => send(text), pauseMs)
        }}
        onBlur={() => send(typed)}
      />
    </div>
  )
}
