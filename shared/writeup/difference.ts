// How far a value moved between as found and after the work, with the interval that the difference lies in.
import { withUnit } from '../units/format.ts'
import type { GaugeVerdict } from '../gauges/verdict.ts'

const decimals = (value: number): number => (String(value).split('.')[1] ?? '').length

/**
 * "+54 ± 5 psi". Half widths are bounds, not deviations, so they add. Without an interval on both sides none is claimed;
 * values in different units have no difference.
 */
export function differenceWords(before: GaugeVerdict, after: GaugeVerdict): string | undefined {
  if (before.unit !== after.unit) return undefined
  const places = Math.max(decimals(before.value), decimals(after.value))
  const difference = (after.value - before.value).toFixed(places)
  const number = Number(difference)
  const signed = `${number > 0 ? '+' : ''}${(number === 0 ? 0 : number).toFixed(places).replace('-', '\u2212')}`
  if (before.plusMinus === undefined || after.plusMinus === undefined) return withUnit(signed, before.unit)
  const wide = Number(
    (before.plusMinus + after.plusMinus).toFixed(
      Math.max(decimals(before.plusMinus), decimals(after.plusMinus)),
    ),
  )
  return `${withUnit(signed, '\u00b1')}\u00a0${withUnit(String(wide), before.unit)}`
}
