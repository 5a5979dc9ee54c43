// Words that turn into a field where they stand. Enter keeps, Escape leaves, and what could not be kept stays in the field.
import { Pencil } from 'lucide-react'
import { useEffect, useRef, useState } from 'react'
import './edit-in-place.css'

type EditInPlaceProps = {
  label: string
  text: string
  /** Said while there is no text. */
  empty: string
  limit: number
  isDisabled: boolean
  /** Resolves to whether the text was kept. */
  onKeep: (text: string) => Promise<boolean>
}

export function EditInPlace({ label, text, empty, limit, isDisabled, onKeep }: EditInPlaceProps) {
  const [typed, setTyped] = useState<string>()
  const field = useRef<HTMLTextAreaElement>(null)
  const opener = useRef<HTMLButtonElement>(null)
  const open = typed !== undefined
  useEffect(() => {
    if (open) field.current?.select()
  }, [open])
  const close = () => {
    setTyped(undefined)
    requestAnimationFrame(() => opener.current?.focus())
  }
  const keep = async (refocus: boolean) => {
    if (typed === undefined) return
    const kept = typed.trim() === text || (await onKeep(typed.trim()))
    if (!kept) return
    if (refocus) close()
    else setTyped(undefined)
  }
  if (!open)
    return (
      <button
        ref={opener}
        type="button"
        className="in-place"
        disabled={isDisabled}
        aria-label={`${label}: ${text || empty}. Change`}
        onClick={() => setTyped(text)}
      >
        <span className={text ? undefined : 'quiet'}>{text || empty}</span>
        {!isDisabled && <Pencil aria-hidden="true" />}
      </button>
    )
  return (
    <textarea
      ref={field}
      className="in-place-field"
      aria-label={label}
      rows={Math.min(6, Math.max(1, Math.ceil(typed.length / 90)))}
      maxLength={limit}
      value={typed}
      onChange={event => setTyped(event.target.value)}
      onBlur={() => void keep(false)}
      onKeyDown={event => {
        if (event.key === 'Enter' && !event.shiftKey) {
          event.preventDefault()
          void keep(true)
        }
        if (event.key === 'Escape') close()
      }}
    />
  )
}
