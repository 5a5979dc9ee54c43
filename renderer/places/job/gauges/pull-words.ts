// A pull in a few words, in the units shown: what stands on its chip and is spoken of it.
import type { UnitChoice } from '../../../../shared/contract/settings-schema.ts'
import type { Pull } from '../../../../shared/job/pull-schema.ts'
import { toPressure } from '../../../../shared/units/convert.ts'
import {
  formatLength,
  formatNumber,
  formatPressure,
  formatVacuum,
  pressureDigits,
  withUnit,
} from '../../../../shared/units/format.ts'
import type { Pressure, Vacuum } from '../../../../shared/units/quantity.ts'

const listed = (parts: readonly (string | false | undefined)[]): string => parts.filter(Boolean).join(', ')

const signed = (percent: number): string =>
  `${percent > 0 ? '+' : ''}${withUnit(String(percent).replace('-', '\u2212'), '%')}`

/** E.g. "118 → 150 psi", "12 % lost, exhaust", "P0302, P0171". */
export function pullWords(pull: Pull, units: UnitChoice): string {
  const p = (quantity: Pressure) => formatPressure(quantity, units.pressure)
  const v = (quantity: Vacuum) => formatVacuum(quantity, units.vacuum)
  switch (pull.test) {
    case 'compression': {
      const { firstPuff, final, wet, held } = pull.entry
      const first = firstPuff ? `${bare(firstPuff, units.pressure)} → ` : ''
      return `${first}${listed([`${p(final)}${wet ? ' wet' : ''}`, held === false && 'fell back'])}`
    }
    case 'running compression': {
      const { idle, snap } = pull.entry
      return listed([idle && `idle ${p(idle)}`, snap && `snap ${p(snap)}`])
    }
    case 'leak-down': {
      const { entry } = pull
      const lost =
        entry.form === 'percent'
          ? `${withUnit(String(entry.percent), '%')} lost`
          : `${p(entry.held)} of ${p(entry.supply)}`
      return listed([lost, ...(entry.escapes ?? []), entry.towards !== undefined && `from ${entry.towards}`])
    }
    case 'balance': {
      const { rpmBefore, rpmAfter, rpmRestored, vacuumBefore, vacuumAfter } = pull.entry
      const back = rpmRestored === undefined ? '' : ` → ${rpmRestored}`
      return listed([
        `${rpmBefore} → ${rpmAfter}${back}\u00a0rpm`,
        vacuumBefore && vacuumAfter && `${v(vacuumBefore)} → ${v(vacuumAfter)}`,
      ])
    }
    case 'vacuum': {
      const { phase, reading, range, rebound, settled, needle, trend } = pull.entry
      return listed([
        `${phase} ${v(reading)}`,
        range && `${v(range.low)} to ${v(range.high)}`,
        rebound && `rebound ${v(rebound)}`,
        settled && `settled ${v(settled)}`,
        needle,
        trend,
      ])
    }
    case 'spark': {
      const { spark, tracks, gap, kilovolts } = pull.entry
      return listed([
        spark,
        tracks && (tracks === 'none seen' ? 'no tracks' : `runs off at ${tracks}`),
        gap && `gap ${formatLength(gap, units.length)}`,
        kilovolts !== undefined && withUnit(String(kilovolts), 'kV'),
      ])
    }
    case 'resistance': {
      const { part, ohms, open, length } = pull.entry
      return listed([
        `${part} ${open ? 'open' : ohms === undefined ? '' : ohmWords(ohms)}`,
        length && formatLength(length, units.length),
      ])
    }
    case 'fuel pressure':
      return listed([
        `${pull.entry.state} ${p(pull.entry.pressure)}`,
        pull.entry.minutes !== undefined && `after ${withUnit(String(pull.entry.minutes), 'min')}`,
      ])
    case 'injector balance':
      return `${bare(pull.entry.before, units.pressure)} → ${p(pull.entry.after)}`
    case 'injector': {
      const { click, pulse, ohms } = pull.entry
      return listed([
        click && `click ${click}`,
        pulse !== undefined && (pulse ? 'pulse' : 'no pulse'),
        ohms !== undefined && ohmWords(ohms),
      ])
    }
    case 'trims': {
      const { bank, state, shortTerm, longTerm, closedLoop } = pull.entry
      return listed([
        `bank ${bank} ${state}`,
        shortTerm !== undefined && `short ${signed(shortTerm)}`,
        longTerm !== undefined && `long ${signed(longTerm)}`,
        closedLoop === false && 'open loop',
      ])
    }
    case 'misfire counts':
      return listed([String(pull.entry.count), pull.entry.during])
    case 'trouble codes': {
      const { codes } = pull.entry
      return codes.length === 0
        ? 'no codes'
        : codes.map(one => `${one.code}${one.state ? ` ${one.state}` : ''}`).join(', ')
    }
    case 'mode 06': {
      const lines = pull.entry.hex.trim().split(/\n+/)
      return `${lines.length} ${lines.length === 1 ? 'line' : 'lines'}, ${lines[0]?.slice(0, 24).trim()}…`
    }
    case 'swap': {
      const { part, named, from, to, result } = pull.entry
      return `${named ?? part}, ${from} ${to === undefined ? 'with a known good one' : `to ${to}`}: ${result}`
    }
    case 'observation':
      return `${pull.entry.seen}: ${pull.entry.answer}`
    default:
      return pull.entry.source.fileName
  }
}

/** Without its unit, before an arrow to the same unit. */
const bare = (quantity: Pressure, unit: Pressure['unit']): string =>
  formatNumber(toPressure(quantity, unit), pressureDigits[unit])

/** "820 Ω", "4.7 kΩ", "1.2 MΩ". */
function ohmWords(ohms: number): string {
  const [size, unit] = ohms >= 1e6 ? [1e6, 'MΩ'] : ohms >= 1e4 ? [1e3, 'kΩ'] : [1, 'Ω']
  return withUnit(formatNumber(ohms / size, ohms / size >= 100 ? 0 : 2).replace(/\.0+$|(\.\d)0$/, '$1'), unit)
}
