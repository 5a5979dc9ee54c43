// The snap: how far the vacuum falls as the throttle opens, and how far it rebounds as it shuts.
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { againstMaximum, settle } from './calling.ts'
import { round, type ShownUnits, vacuumWords } from './shown.ts'
import { sources } from './sources.ts'
import { doubtBetween, possiblePulls, valueOf, type VacuumValue } from './vacuum-values.ts'
import { shownVacuum } from './vacuum-words.ts'
import type { GaugeVerdict } from './verdict.ts'

/** Published low points run from 0 to 5 inHg; a hard zero alone is no fault. */
const snapLowest = 5
/** One scale division; the idle after a snap is seldom exactly the one before. Ours. */
const settleWithin = 0.5

/** `idle` is the idle reading of the same stage. */
export function judgeSnap(
  job: Job,
  stage: Stage,
  idle: VacuumValue | undefined,
  units: ShownUnits,
): GaugeVerdict[] {
  const pulls = possiblePulls(job, stage, 'snap')
  const low = valueOf(job, pulls, entry => entry.reading)
  const rebound = valueOf(job, pulls, entry => entry.rebound)
  const settled = valueOf(job, pulls, entry => entry.settled)
  return [
    ...(low ? [fall(low, stage, units)] : []),
    ...(rebound ? [reboundOver(rebound, idle, stage, units)] : []),
    ...(settled && idle ? [settling(settled, idle, stage, units)] : []),
  ]
}

function fall(low: VacuumValue, stage: Stage, units: ShownUnits): GaugeVerdict {
  const call = againstMaximum(low.value, low.plusMinus, snapLowest)
  // On the edge of the accepted span nothing hangs on half a division.
  const verdict = call === 'outside' ? 'watch' : 'within'
  return {
    test: 'vacuum',
    rule: 'snap, lowest',
    stage,
    ...shownVacuum(low, units),
    verdict,
    limit: `falls to between 0 and ${vacuumWords(snapLowest, units)}`,
    why:
      verdict === 'watch'
        ? 'It falls too little: the throttle was not snapped right open, or the gauge is damped.'
        : 'A fall to nearly nothing is normal; a hard zero alone is no fault, the rebound decides.',
    source: sources.snap,
  }
}

function reboundOver(
  rebound: VacuumValue,
  idle: VacuumValue | undefined,
  stage: Stage,
  units: ShownUnits,
): GaugeVerdict {
  const base = {
    test: 'vacuum',
    rule: 'snap, rebound',
    stage,
    ...shownVacuum(rebound, units),
    source: sources.snap,
  } as const
  if (!idle)
    return {
      ...base,
      verdict: 'noted',
      limit: 'above the idle reading',
      why: 'The idle reading is missing, so there is nothing to hold the rebound against.',
    }
  const over = rebound.value - idle.value
  const doubt = doubtBetween(rebound, idle)
  const verdict = over > doubt ? 'within' : over < -doubt ? 'outside' : 'cannot be called'
  return {
    ...base,
    verdict,
    limit: `above the idle reading of ${vacuumWords(idle.value, units)}`,
    why:
      verdict === 'within'
        ? `${round(over) > 0 ? vacuumWords(over, units) : 'A little'} above idle: a wide fall and a wide rebound are normal.`
        : `A small rebound: rings not sealing come first, once gasket leaks are excluded.${settle(verdict)}`,
    source: sources.snap,
  }
}

/** Where the needle comes to rest again: at the idle reading, or the return hangs. */
function settling(settled: VacuumValue, idle: VacuumValue, stage: Stage, units: ShownUnits): GaugeVerdict {
  const apart = settled.value - idle.value
  const doubt = doubtBetween(settled, idle) + settleWithin
  const back = Math.abs(apart) <= doubt
  return {
    test: 'vacuum',
    rule: 'snap, settled',
    stage,
    ...shownVacuum(settled, units),
    verdict: back ? 'within' : 'watch',
    limit: `back at the idle reading of ${vacuumWords(idle.value, units)}`,
    why: back
      ? 'It settles where it idled.'
      : apart < 0
        ? 'It comes to rest below idle: exhaust back pressure holds the return, or the idle had not come back when it was read.'
        : 'It comes to rest above idle: the speed had not come back when it was read.',
    source: 'Subaru intake manifold vacuum page; Lincoln general vacuum test page',
  }
}
