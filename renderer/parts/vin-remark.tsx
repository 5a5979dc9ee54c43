// What the check digit of a VIN says. Only ever a remark: many markets have no check digit.
import { checkVin } from '../../shared/engine/vin.ts'

export function VinRemark({ vin }: { vin: string }) {
  const { state, expected, normalised } = checkVin(vin)
  const text = {
    empty: undefined,
    ok: 'The check digit fits.',
    'wrong length':
      normalised.length < 17
        ? `${normalised.length} of 17 characters.`
        : 'More than 17 characters: older and foreign numbers may be, check it.',
    'bad characters': 'Holds a character that a VIN never has (I, O, Q or a sign): check it.',
    'check digit differs': `The ninth character should be ${expected ?? ''} where check digits are used (North American practice): check for a slip, or leave it.`,
  }[state]
  return text ? (
    <p className="field-remark" role="status">
      {text}
    </p>
  ) : null
}
