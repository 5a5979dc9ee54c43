// The check digit of a vehicle identification number, as 49 CFR 565.15(c) computes it. North American practice: many
// markets have none, so a difference is a remark, never a refusal.

const values: Record<string, number> = {
  ...Object.fromEntries([...'0123456789'].map(digit => [digit, Number(digit)])),
  ...Object.fromEntries([...'ABCDEFGH'].map((letter, i) => [letter, i + 1])),
  ...Object.fromEntries([...'JKLMN'].map((letter, i) => [letter, i + 1])),
  P: 7,
  R: 9,
  ...Object.fromEntries([...'STUVWXYZ'].map((letter, i) => [letter, i + 2])),
}
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
  for (const [i, character] of [...normalised].entries()) {
    const value = values[character]
    if (value === undefined) return { state: 'bad characters', normalised }
    sum += value * (weights[i] ?? 0)
  }
  const remainder = sum % 11
  const expected = remainder === 10 ? 'X' : String(remainder)
  return { state: normalised[8] === expected ? 'ok' : 'check digit differs', expected, normalised }
}
