// What a finding is, as data: its outcomes, how often each comes without any fault, and how often with each cause.
import type { CauseId } from './causes.ts'

/** Chances of the outcomes, in their order, and where they come from: a text, 'common practice' or 'judgement'. */
export type Chances = { chances: readonly number[]; source: string }

export type Finding = {
  id: string
  /** What it is seen at. */
  of: 'cylinder' | 'engine'
  /**
   * `ordered`: outcomes from sound to bad, and the worst of the effects present shows. `named`: outcomes without an order;
   * of several effects present each shows as often.
   */
  kind: 'ordered' | 'named'
  outcomes: readonly string[]
  /** With no cause that acts on it. */
  sound: Chances
  effects: Readonly<Partial<Record<CauseId, Chances>>>
  /** One piece of it moves odds by no more than this. */
  most: number
}

export const judged = (...chances: number[]): Chances => ({ chances, source: 'judgement' })
export const usual = (...chances: number[]): Chances => ({ chances, source: 'common practice' })
/** The direction is the text's; the numbers that put it into odds are judgement. */
export const after = (source: string, ...chances: number[]): Chances => ({ chances, source })

/** Odds of one measured or seen piece, and of one that somebody told. */
export const mostOdds = { seen: 100, told: 20 } as const
