// One cylinder's drop against its mates: none at all, clearly small, its share, or too near to call.
import { median } from './middle.ts'
import { percentWords } from './shown.ts'
import type { Verdict } from './verdict.ts'

export type Drop = { cylinder: number; drop: number; plusMinus: number }

/**
 * "Clearly smaller" has no published figure. Ours: less than half of the others' middle drop is weak, less than three
 * quarters is watched, each by more than the reading error.
 */
export const balanceRules = { weakShare: 50, watchShare: 75 } as const

export type Share = { percent: number; plusMinus: number }
export type ShareCall = { verdict: Verdict; words: string }

/** What a cylinder's drop is of the others' middle one, in percent; undefined where that is too small to divide by. */
export function shareOf(one: Drop, others: readonly Drop[], recovery = 0): Share | undefined {
  const usual = median(others.map(other => other.drop))
  const usualError = median(others.map(other => other.plusMinus)) / Math.sqrt(others.length)
  if (others.length === 0 || usual <= 2 * usualError) return undefined
  const reading = (100 * Math.hypot(one.plusMinus, (one.drop * usualError) / usual)) / usual
  return { percent: (100 * one.drop) / usual, plusMinus: Math.hypot(reading, recovery) }
}

/**
 * `say` writes a drop with its unit; `recovery` is what idle control may hide of a share, in percent. Needs at least one
 * other cylinder.
 */
export function callShare(
  one: Drop,
  others: readonly Drop[],
  say: (drop: number) => string,
  recovery = 0,
): ShareCall {
  const usual = median(others.map(other => other.drop))
  const clearest = others.toSorted((a, b) => b.drop - a.drop)[0]
  const shows = clearest !== undefined && clearest.drop > 2 * clearest.plusMinus
  if (one.drop <= one.plusMinus && shows) {
    const words = `no drop to be told from none, while cylinder ${clearest.cylinder} drops ${say(clearest.drop)}: `
    return one.drop + one.plusMinus < (clearest.drop * balanceRules.weakShare) / 100
      ? { verdict: 'outside', words: `${words}it is not working.` }
      : {
          verdict: 'cannot be called',
          words: `${words}not working or only weak, the readings are too rough to say. Repeat with a steadier idle.`,
        }
  }
  if (one.drop <= one.plusMinus)
    return {
      verdict: 'cannot be called',
      words:
        'no cylinder drops clearly: idle control may be making up for each cut. Fix idle air or raise the idle and repeat.',
    }
  const found = shareOf(one, others, recovery)
  if (!found)
    return one.drop > 2 * one.plusMinus
      ? { verdict: 'within', words: 'a clear drop, though the others hardly drop.' }
      : {
          verdict: 'cannot be called',
          words: 'the others hardly drop either; repeat with idle control fixed.',
        }
  const { percent: share, plusMinus: doubt } = found
  const words = `${percentWords(share)} \u00b1 ${percentWords(doubt)} of the others' middle ${say(usual)}: `
  if (share + doubt < balanceRules.weakShare) return { verdict: 'outside', words: `${words}it is weak.` }
  if (share - doubt < balanceRules.weakShare)
    return {
      verdict: 'cannot be called',
      words: `${words}weak or nearly so. Repeat the cut-out, or raise the idle for larger drops.`,
    }
  if (share + doubt < balanceRules.watchShare)
    return { verdict: 'watch', words: `${words}clearly less than its mates.` }
  return { verdict: 'within', words: `${words}it does its share.` }
}
