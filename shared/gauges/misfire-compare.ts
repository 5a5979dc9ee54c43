// Misfire counts of the cylinders beside each other: whether one stands clear of the middle of the others.
import { median } from './middle.ts'
import type { Verdict } from './verdict.ts'

export type Count = { cylinder: number; count: number }

/** The counter holds sixteen bits and stops there. */
export const fullCounter = 65535

/** There is no published limit for a bare count. */
export const countLimit =
  'no published limit for a count; ours: clear of the middle of the other cylinders by twice the chance in both counts, or of the lowest by four times'
export const countSource =
  'counting statistics (square root of a count); where, never why: misfire monitor descriptions (Toyota 2004, Honda 2012)'

const chance = (count: number): number => Math.sqrt(Math.max(0, count))

const clearBy = (times: number, one: number, usual: number): boolean =>
  one - times * chance(one) > usual + times * chance(usual)

type Standing = Count & { usual?: number; lowest?: number }

/** Where most cylinders misfire the middle misfires too: then the lowest of them is what is left to stand clear of. */
const standsClear = ({ count, usual, lowest }: Standing): boolean =>
  usual !== undefined && lowest !== undefined && (clearBy(2, count, usual) || clearBy(4, count, lowest))

/** By cylinder number. One cylinder alone is only noted. `within` needs another that stands clear: the monitor ran. */
export function callCounts(counts: readonly Count[]): (Count & { verdict: Verdict; why: string })[] {
  const standings = counts.map((one): Standing => {
    const others = counts.filter(other => other.cylinder !== one.cylinder).map(other => other.count)
    return others.length === 0 ? one : { ...one, usual: median(others), lowest: Math.min(...others) }
  })
  const clear = standings.filter(standsClear)
  return standings
    .map(({ cylinder, count, ...usual }) => ({
      cylinder,
      count,
      ...call({ cylinder, count, ...usual }, clear),
    }))
    .toSorted((a, b) => a.cylinder - b.cylinder)
}

function call(
  { cylinder, count, usual, lowest = 0 }: Standing,
  clear: readonly Count[],
): { verdict: Verdict; why: string } {
  if (usual === undefined)
    return {
      verdict: 'noted',
      why: `${words(count)}; read the other cylinders too, there is nothing to compare with.`,
    }
  const beside = `${words(count)} beside a middle of ${usual} in the others`
  if (clear.some(one => one.cylinder === cylinder))
    return {
      verdict: 'outside',
      why: `${beside}${clearBy(2, count, usual) ? '' : ` and a lowest of ${lowest}`}: it misfires here. Counts say where, never why: plug, coil, injector and compression all count alike.`,
    }
  if (clearBy(1, count, usual))
    return { verdict: 'watch', why: `${beside}: more, but chance could do that. Drive it again and compare.` }
  if (clear.length > 0) return { verdict: 'within', why: `${beside}: not where it misfires.` }
  return {
    verdict: 'noted',
    why:
      count === 0
        ? 'No misfire counted and none clear elsewhere: weak proof, as the monitor pauses on rough roads, at quick throttle and when cold.'
        : `${beside}: no cylinder stands clear. All alike points at fuel, air or a sensor that all share.`,
  }
}

const words = (count: number): string =>
  count >= fullCounter ? `counter full, ${count} or more` : String(count)
