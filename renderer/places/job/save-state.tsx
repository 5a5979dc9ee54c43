// One quiet line: saving, saved and when, or, loudly, not saved.
import { useMutationState } from '@tanstack/react-query'
import { Check, LoaderCircle, TriangleAlert } from 'lucide-react'
import { useState } from 'react'
import { savingKey } from '../../api/use-jobs.ts'

export function SaveState({ updatedAt }: { updatedAt: string }) {
  const all = useMutationState({ filters: { mutationKey: savingKey }, select: one => one.state.status })
  const [today] = useState(() => new Date().toDateString())
  const last = all.at(-1)
  const state = all.includes('pending') ? 'saving' : last === 'error' ? 'failed' : 'saved'
  return (
    <p className="job-saved" data-state={state} role="status">
      {state === 'saving' && (
        <>
          <LoaderCircle aria-hidden="true" /> saving
        </>
      )}
      {state === 'saved' && (
        <>
          <Check aria-hidden="true" /> saved {whenSaved(updatedAt, today)}
        </>
      )}
      {state === 'failed' && (
        <>
          <TriangleAlert aria-hidden="true" /> last change not saved
        </>
      )}
    </p>
  )
}

/** The time of day, or the date when that was not today. */
function whenSaved(updatedAt: string, today: string): string {
  const at = new Date(updatedAt)
  return at.toDateString() === today
    ? at.toLocaleTimeString(undefined, { hour: '2-digit', minute: '2-digit' })
    : at.toLocaleDateString(undefined, { dateStyle: 'medium' })
}
