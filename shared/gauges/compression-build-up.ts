// How the pulls of one cylinder behave: do they repeat, and how much of the final comes on the first puff.
import { againstMinimum, settle } from './calling.ts'
import { compressionRules, type Setting } from './compression-comparison.ts'
import type { Measured } from './compression-values.ts'
import { tidy } from './middle.ts'
import { percentWords, pressureShown, pressureWords, round } from './shown.ts'
import { sources } from './sources.ts'
import type { CylinderVerdict } from './verdict.ts'

/** The limit is one scale division, so it has no guard band of its own. */
export function repeats(one: Measured, { stage, units }: Setting): CylinderVerdict {
  const words = (psi: number) => pressureWords(psi, units)
  const base = {
    test: 'compression',
    rule: 'repeat',
    cylinder: one.cylinder,
    stage,
    source: sources.repeat,
    about: 'reading',
  } as const
  if (one.pulls < 2)
    return {
      ...base,
      value: one.pulls,
      unit: 'pull',
      verdict: 'noted',
      limit: 'at least two pulls a cylinder',
      why: 'One pull only: a second shows whether it repeats.',
      source: sources.practice,
    }
  const apart = tidy(one.range) > compressionRules.repeatPsi
  return {
    ...base,
    ...pressureShown(one.range, units),
    verdict: apart ? 'watch' : 'within',
    limit: `pulls of one cylinder within about ${words(compressionRules.repeatPsi)}`,
    why: `${one.finals.map(words).join(', ')}.${apart ? ' They do not repeat: check adapter, gauge valve and battery, and pull again.' : ''}`,
  }
}

/** A long hose lowers the first puff by itself, so this alone never condemns a cylinder. */
export function firstPuffs(values: readonly Measured[], setting: Setting): CylinderVerdict[] {
  const verdicts = values.flatMap(one => {
    const { firstPuff, finalOfPuffed } = one
    return firstPuff === undefined || finalOfPuffed === undefined || finalOfPuffed <= 0
      ? []
      : [ofOne(one, firstPuff, finalOfPuffed, setting)]
  })
  const allLow = verdicts.length > 2 && verdicts.every(one => one.verdict === 'watch')
  return allLow
    ? verdicts.map(one => ({
        ...one,
        why: `${one.why} All cylinders are alike in this: the volume of the tester's hose can do it.`,
      }))
    : verdicts
}

/** Part of the final that a tight cylinder with a 55 ml chamber brings into a hose on the first stroke. */
export const hoseShare = (millilitres: number): number => 55 / (55 + millilitres)

function ofOne(one: Measured, first: number, final: number, { stage, units }: Setting): CylinderVerdict {
  const share = (100 * first) / final
  const plusMinus = 100 * Math.hypot(one.read / final, (first * one.between) / final ** 2)
  const base = {
    test: 'compression',
    rule: 'first puff',
    cylinder: one.cylinder,
    stage,
    value: round(share),
    plusMinus: round(plusMinus),
    unit: '%',
    limit: `at least ${percentWords(compressionRules.firstPuffShare)} of the final on the first puff; compare cylinders on one tester`,
    source: sources.firstPuff,
  } as const
  const seen = `First puff ${pressureWords(first, units)}, final ${pressureWords(final, units)}.`
  if (tidy(first) > tidy(final))
    return {
      ...base,
      verdict: 'noted',
      why: `${seen} The final cannot be below the first puff: one of the two was misread.`,
      about: 'reading',
    }
  const call = againstMinimum(share, plusMinus, compressionRules.firstPuffShare)
  const byHose = one.hose === undefined ? 1 : hoseShare(one.hose)
  if (
    call === 'outside' &&
    againstMinimum(share, plusMinus, compressionRules.firstPuffShare * byHose) !== 'outside'
  )
    return {
      ...base,
      verdict: 'cannot be called',
      why: `${seen} The ${one.hose} ml of the hose alone take the first puff to about ${percentWords(100 * byHose)} of the final: compare with the other cylinders on this tester.`,
      source: sources.hose,
    }
  return {
    ...base,
    verdict: call === 'outside' ? 'watch' : call,
    why: `${seen}${call === 'outside' ? ' Low on the first stroke: rings if it then builds up, valves if it does not.' : settle(call)}`,
  }
}
