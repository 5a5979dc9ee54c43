// The check digit of a vehicle identification number, as 49 CFR 565.15(c) computes it. North American practice: many
// markets have none, so a difference is a remark, never a refusal.

/** Letters count up in runs that skip I, O and Q (table III); P and R stand alone. */
const runs: readonly [characters: string, first: number][] = [
  ['0123456789', 0],
  ['ABCDEFGH', 1],
  ['JKLMN', 1],
  ['P', 7],
  ['R', 9],
  ['STUVWXYZ', 2],
]
const values = new Map(
  runs.flatMap(([characters, first]) =>
    Array.from(characters, (character, i): [string, number] => [character, first + i]),
  ),
)
/** By place (table IV); the check digit itself counts nothing. */
const weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2]

export type VinCheck = {
  state: 'ok' | 'empty' | 'wrong length' | 'bad characters' | 'check digit differs'
  /** The digit that the ninth place would have to hold. */
  expected?: string
  /** Upper case, without spaces and dashes. */
  normalised: string
}

/** Checks length, characters (I, O and Q are never used) and check digit. */
export function checkVin(text: string): VinCheck {
  const normalised = text.toUpperCase().replace(/[\s-]/g, '')
  if (normalised === '') return { state: 'empty', normalised }
  if (normalised.length !== 17) return { state: 'wrong length', normalised }
  let sum = 0
  for (const [i, weight] of weights.entries()) {
    const value = values.get(normalised.charAt(i))
    if (value === undefined) return { state: 'bad characters', normalised }
    sum += value * weight
  }
  const remainder = sum % 11
  const expected = remainder === 10 ? 'X' : String(remainder)
  return { state: normalised[8] === expected ? 'ok' : 'check digit differs', expected, normalised }
}
