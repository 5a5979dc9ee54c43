// Vacuum at idle, 2500 rpm, in a snap and while cranking; the idle band follows altitude or barometer.
import { useState } from 'react'
import { atmosphereOf, idleBand } from '../../../../shared/gauges/atmosphere.ts'
import { vacuumValue } from '../../../../shared/gauges/vacuum-values.ts'
import type { VacuumEntry } from '../../../../shared/gauges/vacuum-entry.ts'
import type { Pull } from '../../../../shared/job/pull-schema.ts'
import { formatVacuum } from '../../../../shared/units/format.ts'
import { parseVacuum } from '../../../../shared/units/parse.ts'
import { useUnits } from '../../../api/use-settings.ts'
import { useJobPage } from '../job-context.ts'
import { EntryField } from './entry-field.tsx'
import { PullChips } from './pull-chips.tsx'

const phases: readonly VacuumEntry['phase'][] = ['idle', '2500 rpm', 'snap', 'cranking']
const needles: readonly NonNullable<VacuumEntry['needle']>[] = [
  'steady',
  'regular drop',
  'irregular drop',
  'fast vibration',
  'slow float',
  'falls away',
]
type Typed = { reading: string; rebound: string; needle: VacuumEntry['needle'] | '' }
const empty: Typed = { reading: '', rebound: '', needle: '' }

export function VacuumTable() {
  const { job, tray, apply, readOnly } = useJobPage()
  const { vacuum: unit } = useUnits()
  const [typed, setTyped] = useState<Readonly<Record<string, Typed>>>({})

  const keep = async (phase: VacuumEntry['phase']) => {
    const now = typed[phase] ?? empty
    const reading = parseVacuum(now.reading, unit)
    const rebound = now.rebound.trim() === '' ? undefined : parseVacuum(now.rebound, unit)
    if (!reading || rebound === null) return
    setTyped(all => ({ ...all, [phase]: empty }))
    const done = await apply({
      command: 'add pull',
      pull: {
        id: crypto.randomUUID(),
        test: 'vacuum',
        stage: tray.stage,
        at: new Date().toISOString(),
        entry: {
          phase,
          reading,
          ...(rebound ? { rebound } : {}),
          ...(now.needle ? { needle: now.needle } : {}),
        },
      },
    })
    if (!done) setTyped(all => ({ ...all, [phase]: now }))
  }
  const label = (pull: Pull): string => {
    if (pull.test !== 'vacuum') return ''
    const { reading, rebound, needle } = pull.entry
    return [formatVacuum(reading, unit), rebound && `rebound ${formatVacuum(rebound, unit)}`, needle]
      .filter(Boolean)
      .join(', ')
  }

  return (
    <div>
      <table className="gauge-table">
        <caption className="visually-hidden">Vacuum readings, {tray.stage}</caption>
        <thead>
          <tr>
            <th scope="col">State</th>
            <th scope="col">Needle</th>
            <th scope="col">Reading ({unit})</th>
            <th scope="col">Rebound ({unit})</th>
            <th scope="col">Readings</th>
          </tr>
        </thead>
        <tbody>
          {phases.map(phase => {
            const now = typed[phase] ?? empty
            const set = (change: Partial<Typed>) =>
              setTyped(all => ({ ...all, [phase]: { ...now, ...change } }))
            return (
              <tr key={phase}>
                <th scope="row">{phase}</th>
                <td>
                  <select
                    aria-label={`Needle at ${phase}`}
                    value={now.needle}
                    disabled={readOnly}
                    onChange={event => set({ needle: needles.find(one => one === event.target.value) ?? '' })}
                  >
                    <option value="">not noted</option>
                    {needles.map(one => (
                      <option key={one}>{one}</option>
                    ))}
                  </select>
                </td>
                <td>
                  <EntryField
                    label={
                      phase === 'snap' ? `Lowest point of the snap, ${unit}` : `Vacuum at ${phase}, ${unit}`
                    }
                    value={now.reading}
                    wrong={now.reading.trim() !== '' && parseVacuum(now.reading, unit) === null}
                    disabled={readOnly}
                    onChange={reading => set({ reading })}
                    onEnter={() => {
                      if (phase !== 'snap') void keep(phase)
                    }}
                  />
                </td>
                <td>
                  {phase === 'snap' && (
                    <EntryField
                      label={`Rebound of the snap, ${unit}`}
                      value={now.rebound}
                      wrong={now.rebound.trim() !== '' && parseVacuum(now.rebound, unit) === null}
                      disabled={readOnly}
                      onChange={rebound => set({ rebound })}
                      onEnter={() => void keep(phase)}
                    />
                  )}
                </td>
                <td>
                  <PullChips
                    pulls={job.pulls.filter(
                      pull =>
                        pull.test === 'vacuum' && pull.stage === tray.stage && pull.entry.phase === phase,
                    )}
                    label={label}
                  />
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
      <IdleBand />
    </div>
  )
}

/** The idle reading against its band, on a scale from nought to the local air pressure. */
function IdleBand() {
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
