// What all vacuum verdicts share: the number as shown, and the air it was read in.
import type { Atmosphere } from './atmosphere.ts'
import { type ShownUnits, vacuumShown, vacuumWords } from './shown.ts'
import type { VacuumValue } from './vacuum-values.ts'

const airBasis: Readonly<Record<Atmosphere['basis'], string>> = {
  barometer: 'by the barometer',
  altitude: 'by the altitude',
  'assumed sea level': 'sea level assumed',
}

export const airWords = (air: Atmosphere, units: ShownUnits): string =>
  `air pressure ${vacuumWords(air.inHg, units)}, ${airBasis[air.basis]}`

export const shownVacuum = (
  { value, plusMinus }: VacuumValue,
  units: ShownUnits,
): { value: number; unit: string; plusMinus: number } => ({
  ...vacuumShown(value, units),
  plusMinus: vacuumShown(plusMinus, units).value,
})
