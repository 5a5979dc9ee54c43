// The idle reading against its band, on a scale from nought to the local air pressure.
import { vacuumBand } from '../../../../shared/gauges/bars.ts'
import { formatVacuum } from '../../../../shared/units/format.ts'
import { useUnits } from '../../../api/use-settings.ts'
import { useJobPage } from '../job-context.ts'

const edgesTyped = {
  both: 'Specified',
  low: 'Specified least',
  high: 'Specified most',
  none: 'Normal',
} as const

export function IdleBand() {
  const { job, tray } = useJobPage()
  const { vacuum: unit } = useUnits()
  const { low, high, to, typed, atmosphere, idle, swing } = vacuumBand(job, tray.stage)
  const at = (inHg: number) => `${Math.max(0, Math.min(100, (inHg / to) * 100))}%`
  const show = (inHg: number) => formatVacuum({ value: inHg, unit: 'inHg' }, unit)
  const read = idle === undefined ? '' : `; read ${show(idle.value)}`
  const swung = swing === undefined ? '' : `, swinging from ${show(swing.low)} to ${show(swing.high)}`
  const words = `${edgesTyped[typed]} idle ${show(low)} to ${show(high)} at air pressure ${show(atmosphere.inHg)} (${atmosphere.basis})${read}${swung}`
  return (
    <>
      <p className="quiet">{words}.</p>
      <div className="band" role="img" aria-label={words}>
        <span className="band-normal" style={{ left: at(low), width: at(high - low) }} />
        {idle !== undefined && (
          <span className="band-reading" style={{ left: at(idle.value) }}>
            <small>{show(idle.value)}</small>
          </span>
        )}
      </div>
    </>
  )
}
