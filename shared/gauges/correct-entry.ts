// Puts the pressures and vacuums of one pull right after a misread gauge. The entry as it was made stays beside it.
import type { Pull } from '../job/pull-schema.ts'
import { type Outcome, done, refuse } from '../job/refusal.ts'
import type { Pressure, Vacuum } from '../units/quantity.ts'
import type { CorrectionHow } from './correction-schema.ts'

type Because = { how: CorrectionHow; reason: string; at: string; by?: string }

/** Twelve digits: 0.1 times 3 is to read 0.3. */
const tidied = (value: number): number => Number(value.toPrecision(12))

const isOfPressure = (unit: string): unit is Pressure['unit'] =>
  unit === 'psi' || unit === 'kPa' || unit === 'bar'
const isOfVacuum = (unit: string): unit is Vacuum['unit'] => unit === 'inHg' || unit === 'kPa'

function numberBy(value: number, how: CorrectionHow): number {
  if (how.kind === 'scale') return tidied(value * how.factor)
  return how.kind === 'offset' ? tidied(value + how.add) : value
}

type Maps = { pressure: (one: Pressure) => Pressure; vacuum: (one: Vacuum) => Vacuum }

const mapsOf = (how: CorrectionHow): Maps => ({
  pressure: ({ value, unit }) => ({
    value: numberBy(value, how),
    unit: how.kind === 'unit' && isOfPressure(how.unit) ? how.unit : unit,
  }),
  vacuum: ({ value, unit }) => ({
    value: numberBy(value, how),
    unit: how.kind === 'unit' && isOfVacuum(how.unit) ? how.unit : unit,
  }),
})

/** The named fields that an entry has, each put through `map`. */
const fieldsBy = <Field extends string, Quantity>(
  entry: { [F in Field]?: Quantity | undefined },
  fields: readonly Field[],
  map: (one: Quantity) => Quantity,
): { [F in Field]?: Quantity } => {
  const changed: { [F in Field]?: Quantity } = {}
  for (const field of fields) {
    const quantity = entry[field]
    if (quantity !== undefined) changed[field] = map(quantity)
  }
  return changed
}

/** The pull with one entry more that counts, or null when its test holds no pressure and no vacuum. */
function withEntry(pull: Pull, { how, ...because }: Because): Pull | null {
  const maps = mapsOf(how)
  const asMade = how.kind === 'as entered'
  const added = <Entry>(entry: Entry) => ({ how, ...because, entry })
  switch (pull.test) {
    case 'compression': {
      const from = asMade ? pull.entry : (pull.corrections?.at(-1)?.entry ?? pull.entry)
      const entry = {
        ...from,
        final: maps.pressure(from.final),
        ...fieldsBy(from, ['firstPuff'], maps.pressure),
      }
      return { ...pull, corrections: [...(pull.corrections ?? []), added(entry)] }
    }
    case 'running compression': {
      const from = asMade ? pull.entry : (pull.corrections?.at(-1)?.entry ?? pull.entry)
      const entry = { ...from, ...fieldsBy(from, ['idle', 'snap'], maps.pressure) }
      return { ...pull, corrections: [...(pull.corrections ?? []), added(entry)] }
    }
    case 'leak-down': {
      const from = asMade ? pull.entry : (pull.corrections?.at(-1)?.entry ?? pull.entry)
      const entry =
        from.form === 'percent'
          ? { ...from, ...fieldsBy(from, ['regulated'], maps.pressure) }
          : { ...from, supply: maps.pressure(from.supply), held: maps.pressure(from.held) }
      return { ...pull, corrections: [...(pull.corrections ?? []), added(entry)] }
    }
    case 'fuel pressure': {
      const from = asMade ? pull.entry : (pull.corrections?.at(-1)?.entry ?? pull.entry)
      const entry = { ...from, pressure: maps.pressure(from.pressure) }
      return { ...pull, corrections: [...(pull.corrections ?? []), added(entry)] }
    }
    case 'injector balance': {
      const from = asMade ? pull.entry : (pull.corrections?.at(-1)?.entry ?? pull.entry)
      const entry = { before: maps.pressure(from.before), after: maps.pressure(from.after) }
      return { ...pull, corrections: [...(pull.corrections ?? []), added(entry)] }
    }
    case 'balance': {
      const from = asMade ? pull.entry : (pull.corrections?.at(-1)?.entry ?? pull.entry)
      const entry = { ...from, ...fieldsBy(from, ['vacuumBefore', 'vacuumAfter'], maps.vacuum) }
      return { ...pull, corrections: [...(pull.corrections ?? []), added(entry)] }
    }
    case 'vacuum': {
      const from = asMade ? pull.entry : (pull.corrections?.at(-1)?.entry ?? pull.entry)
      const { range } = from
      const entry = {
        ...from,
        reading: maps.vacuum(from.reading),
        ...fieldsBy(from, ['rebound', 'settled'], maps.vacuum),
        ...(range && { range: { low: maps.vacuum(range.low), high: maps.vacuum(range.high) } }),
      }
      return { ...pull, corrections: [...(pull.corrections ?? []), added(entry)] }
    }
    default:
      return null
  }
}

const entryThatCounts = (pull: Pull): unknown => pull.corrections?.at(-1)?.entry ?? pull.entry

/**
 * The pull with one correction more. A correction starts from what counted until now; "as entered" goes back to the
 * entry as it was made. Refused when it would change nothing, as with a unit that the test cannot have.
 */
export function correctPull(pull: Pull, because: Because): Outcome<Pull> {
  const corrected = withEntry(pull, because)
  if (
    corrected !== null &&
    JSON.stringify(entryThatCounts(corrected)) !== JSON.stringify(entryThatCounts(pull))
  )
    return done(corrected)
  return refuse(
    'This correction changes nothing in the pull.',
    `${pull.test} pull ${pull.id}`,
    'Choose pulls that hold a pressure or a vacuum, and a correction that alters it.',
  )
}
