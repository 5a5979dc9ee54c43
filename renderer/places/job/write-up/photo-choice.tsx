// Which photos the report shows: chosen by hand, or left to the report.
import { slotKey } from '../../../../shared/engine/slots.ts'
import { Button } from '../../../parts/button.tsx'
import { Thumb } from '../../../parts/photo/thumb.tsx'
import { useJobPage } from '../job-context.ts'

export function PhotoChoice() {
  const { job, apply, readOnly } = useJobPage()
  const { shots } = job.writeUp
  const all = job.trays.flatMap(tray =>
    tray.slots.flatMap(slot =>
      slot.shots.map(shot => ({
        ...shot,
        label: `${slotKey(slot.plug ? { cylinder: slot.cylinder, plug: slot.plug } : slot)}, ${shot.kind}, ${tray.name.toLowerCase()}`,
      })),
    ),
  )
  const choose = (chosen: string[]) =>
    void apply({ command: 'set write-up', writeUp: { ...job.writeUp, shots: chosen } })
  if (all.length === 0) return null
  return (
    <details className="photo-choice">
      <summary>
        Photos: {shots.length === 0 ? 'chosen by the report' : `${shots.length} chosen by hand`}
      </summary>
      {shots.length > 0 && (
        <Button isDisabled={readOnly} onPress={() => choose([])}>
          Leave the choice to the report
        </Button>
      )}
      <ul>
        {all.map(shot => (
          <li key={shot.id}>
            <button
              type="button"
              aria-pressed={shots.includes(shot.id)}
              aria-label={shot.label}
              disabled={readOnly}
              onClick={() =>
                choose(shots.includes(shot.id) ? shots.filter(one => one !== shot.id) : [...shots, shot.id])
              }
            >
              <Thumb photo={shot.photo} alt="" />
              <span>{shot.label}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  )
}
