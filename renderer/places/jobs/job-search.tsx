// The search field of the job list: results as one types, Enter opens the first, arrow down goes into the list,
// Escape clears and then gives the focus back.
import { Search, X } from 'lucide-react'
import { type RefObject, useRef } from 'react'

type JobSearchProps = {
  field: RefObject<HTMLInputElement | null>
  text: string
  onText: (text: string) => void
  onOpen: () => void
  onDown: () => void
}

export function JobSearch({ field, text, onText, onOpen, onDown }: JobSearchProps) {
  const cameFrom = useRef<HTMLElement>(null)
  return (
    <div className="jobs-search">
      <Search aria-hidden="true" />
      <input
        ref={field}
        type="text"
        role="searchbox"
        aria-label="Search jobs"
        value={text}
        autoComplete="off"
        spellCheck={false}
        aria-keyshortcuts="/"
        onFocus={event => {
          cameFrom.current = event.relatedTarget instanceof HTMLElement ? event.relatedTarget : null
        }}
        onChange={event => onText(event.target.value)}
        onKeyDown={event => {
          if (event.key === 'Enter') onOpen()
          if (event.key === 'ArrowDown') {
            event.preventDefault()
            onDown()
          }
          if (event.key !== 'Escape') return
          if (text !== '') onText('')
          else if (cameFrom.current) cameFrom.current.focus()
          else event.currentTarget.blur()
        }}
      />
      {text === '' ? (
        <kbd aria-hidden="true">/</kbd>
      ) : (
        <button type="button" aria-label="Clear the search" onClick={() => onText('')}>
          <X aria-hidden="true" />
        </button>
      )}
    </div>
  )
}
