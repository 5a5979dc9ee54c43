// Work under way: what, how far, and Cancel.
import type { TaskEvent } from '../../shared/contract/task-schema.ts'
import { Button } from './button.tsx'
import './progress-strip.css'

type ProgressStripProps = { event: TaskEvent | undefined; what: string; onCancel: () => void }

export function ProgressStrip({ event, what, onCancel }: ProgressStripProps) {
  const progress = event?.kind === 'progress' ? event : undefined
  const done = progress?.done ?? 0
  const total = progress?.total ?? 0
  return (
    <div className="progress-strip" role="status">
      <span>{what}</span>
      <progress aria-label={what} max={Math.max(total, 1)} value={done} />
      <span className="number">{total > 0 ? `${done} of ${total}` : ''}</span>
      <Button onPress={onCancel}>Cancel</Button>
    </div>
  )
}
