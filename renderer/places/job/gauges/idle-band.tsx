// The idle reading against its band, on a scale from nought to the local air pressure.
import { atmosphereOf, idleBand } from '../../../../shared/gauges/atmosphere.ts'
import { vacuumValue } from '../../../../shared/gauges/vacuum-values.ts'
import { formatVacuum } from '../../../../shared/units/format.ts'
import { useUnits } from '../../../api/use-settings.ts'
import { useJobPage } from '../job-context.ts'

export function IdleBand() {
  const { job, tray } = useJobPage()
  const { vacuum: unit } = useUnits()
  const atmosphere = atmosphereOf(job.circumstances)
  const band = idleBand(atmosphere)
  const idle = vacuumValue(job, tray.stage, 'idle')
  const at = (inHg: number) => `${Math.max(0, Math.min(100, (inHg / atmosphere.inHg) * 100))}%`
  const show = (inHg: number) => formatVacuum({ value: inHg, unit: 'inHg' }, unit)
  const words = `Normal idle ${show(band.low)} to ${show(band.high)} at air pressure ${show(atmosphere.inHg)} (${atmosphere.basis})${idle === undefined ? '' : `; read ${show(idle)}`}`
  return (
    <>
      <p className="quiet">{words}.</p>
      <div className="band" role="img" aria-label={words}>
        <span className="band-normal" style={{ left: at(band.low), width: at(band.high - band.low) }} />
        {idle !== undefined && (
          <span className="band-reading" style={{ left: at(idle) }}>
            <small>{show(idle)}</small>
          </span>
        )}
      </div>
    </>
  )
}
