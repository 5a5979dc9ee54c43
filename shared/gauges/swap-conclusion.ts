// What one swap says of each part that was moved: proven, cleared or neither, and why. It never says more than it can.
import type { SwapEntry } from './swap-entry.ts'
import { inWords } from './shown.ts'
import type { Verdict } from './verdict.ts'

export type Conclusion = {
  /** The part in words. */
  part: string
  verdict: Extract<Verdict, 'outside' | 'within' | 'watch' | 'cannot be called'>
  why: string
  /** The entry contradicts itself: it speaks of the writing, not of the engine. */
  about?: 'reading'
}

/** `companion` is the cylinder at top dead centre together with `from`, where there is one. */
export function conclude(entry: SwapEntry, companion: number | null): Conclusion[] {
  const parts = partsOf(entry)
  const one =
    entry.to === undefined ? withKnownGood(entry, parts) : swapped(entry, entry.to, parts, companion)
  return parts.map(part => ({ part, ...one }))
}

/** The part and those moved along with it, each once. */
export function partsOf({ part, named, also = [] }: SwapEntry): string[] {
  const name = (of: SwapEntry['part']) => (of === 'other' ? (named ?? 'other part') : of)
  return [...new Set([part, ...also].map(name))]
}

type Said = Omit<Conclusion, 'part'>

const nothing: Said = {
  verdict: 'cannot be called',
  why: 'The fault did not come back, which proves nothing: neither part nor cylinder. Wait until it shows, by counts or by ear, then call it.',
}

function withKnownGood({ result, intermittent, from }: SwapEntry, parts: readonly string[]): Said {
  const words = inWords(parts)
  if (result === 'did not come back') return nothing
  if (result === 'stayed')
    return {
      verdict: 'within',
      why: `The fault stayed with a known-good ${words} fitted: the old one is cleared. ${leftAt(from)}`,
    }
  if (result === 'followed the part' || result === 'on both')
    return {
      verdict: 'cannot be called',
      why: 'A known-good part came in and none went to another cylinder, so nothing can follow it. Say where the part went, or whether the fault was gone.',
      about: 'reading',
    }
  if (parts.length > 1) return severalMoved(parts)
  return intermittent === true
    ? {
        verdict: 'cannot be called',
        why: 'Gone with a known-good part, but it comes and goes by itself: fit the old one again; if the fault returns with it, the part is proven.',
      }
    : {
        verdict: 'outside',
        why: `Gone with a known-good ${words}: the old one is proven bad, unless a joint was disturbed. Fit the old one once more to be sure.`,
      }
}

function swapped(
  { result, intermittent, part, from }: SwapEntry,
  to: number,
  parts: readonly string[],
  companion: number | null,
): Said {
  const pair = to === companion ? companionCaution(from, to, part) : ''
  if (from === to)
    return {
      verdict: 'cannot be called',
      why: 'Taken from and fitted to the same cylinder: nothing was moved.',
      about: 'reading',
    }
  if (result === 'did not come back') return nothing
  if (result === 'gone')
    return {
      verdict: 'cannot be called',
      why: 'Gone from both cylinders: moving the part mended a joint or a seat for now, or the fault pauses. It proves no part; look at connections, drive on.',
    }
  if (result === 'on both')
    return {
      verdict: 'cannot be called',
      why: `On both cylinders now: two faults, or a cause that both share.${
        to === companion ? ` ${from} and ${to} are companions: shared coil or its driver first.` : ''
      } Change one thing at a time.`,
    }
  if (result === 'stayed')
    return {
      verdict: 'within',
      why: `The fault stayed at cylinder ${from} while ${inWords(parts)} went to ${to}: cleared. ${leftAt(from)}${pair}`,
    }
  if (parts.length > 1) return severalMoved(parts)
  return intermittent === true
    ? {
        verdict: 'watch',
        why: `Followed the part to cylinder ${to}, but it comes and goes: let it show there several times, and never at ${from}, before the part is called.${pair}`,
      }
    : {
        verdict: 'outside',
        why: `The fault went with the part from cylinder ${from} to ${to}: the part is proven, cylinder ${from} itself is cleared.${pair}`,
      }
}

const severalMoved = (parts: readonly string[]): Said => ({
  verdict: 'cannot be called',
  why: `${inWords(parts)} were moved at once: one of them it is, and which cannot be told. Move one back.`,
})

const leftAt = (cylinder: number): string =>
  `What is left at cylinder ${cylinder}: compression, valves, the other ignition parts, injector, its drive and wiring.`

/** One coil may serve both plugs: then a coil moves nothing, and a plug or lead at either end spoils both. */
const companionCaution = (from: number, to: number, part: SwapEntry['part']): string =>
  part === 'coil'
    ? ` ${from} and ${to} are companions: this holds for a coil each. Where one coil serves both, nothing was moved.`
    : part === 'plug' || part === 'lead'
      ? ` ${from} and ${to} are companions: where one coil serves both, a bad plug or lead shows at either end. Swap with another cylinder to be sure.`
      : ''
