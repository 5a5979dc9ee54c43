// What the pointer did in one state of the engine, with the causes that the table gives for it.
import { cylindersOf } from '../engine/relations.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { atmosphereOf, fallOf } from './atmosphere.ts'
import { againstMaximum } from './calling.ts'
import { median, tidy } from './middle.ts'
import { engineOf, naturalRipple, rippleSource } from './needle-ripple.ts'
import { needleRows, needleTable, rowWords } from './needle-table.ts'
import { type ShownUnits, vacuumShown } from './shown.ts'
import type { NeedleBehaviour, VacuumPhase } from './vacuum-entry.ts'
import { idleExpectation } from './vacuum-expectation.ts'
import { inHg, possiblePulls, swingOf, type VacuumPull } from './vacuum-values.ts'
import type { GaugeVerdict } from './verdict.ts'

/** A steady needle gives no verdict of its own: the level speaks (vacuum-idle.ts). */
const behaviours = [...new Set(needleTable.map(row => row.needle))].filter(needle => needle !== 'steady')

/** Few cylinders make these of their own, as long as they are even. */
const ripples: ReadonlySet<NeedleBehaviour> = new Set(['small flicker', 'fast vibration'])
const uneven: ReadonlySet<NeedleBehaviour> = new Set(['regular drop', 'sharp deep drop', 'irregular drop'])

/** Behaviours that mean something in a state of the engine; at idle and at speed all of them do. */
function speaks(phase: VacuumPhase, needle: NeedleBehaviour): boolean {
  if (phase === 'cranking') return uneven.has(needle)
  if (phase === 'snap' || phase === 'trailing throttle') return needle === 'slow return'
  return true
}

/** One verdict for each behaviour seen in this state of the engine. */
export function judgeNeedle(job: Job, stage: Stage, phase: VacuumPhase, units: ShownUnits): GaugeVerdict[] {
  const pulls = possiblePulls(job, stage, phase)
  return behaviours
    .filter(needle => speaks(phase, needle))
    .flatMap(needle => {
      const seen = pulls.filter(pull => pull.entry.needle === needle)
      if (seen.length === 0) return []
      const lowest = Math.min(...seen.map(pull => inHg(pull.entry.range?.low ?? pull.entry.reading)))
      const said =
        phase === 'cranking'
          ? crankingUneven
          : (rippleOf(job, needle, seen) ?? meaningOf(job, phase, needle, seen))
      return [
        {
          test: 'vacuum',
          rule: `needle at ${phase}: ${needle}`,
          stage,
          ...vacuumShown(lowest, units),
          limit: phase === 'cranking' ? 'even pulses' : 'a steady needle',
          ...said,
        },
      ]
    })
}

type Said = Pick<GaugeVerdict, 'verdict' | 'why' | 'source'>

/** While cranking the needle flutters by nature; only unevenness says something. */
const crankingUneven: Said = {
  verdict: 'watch',
  why: 'Uneven pulses while cranking: a leak at one or more cylinders (burned or stuck valve, intake leak there, worn guide).',
  source: 'hand vacuum pump manual (MV8500)',
}

/** Undefined where the ripple is more than the number of cylinders explains, or the behaviour is none. */
function rippleOf(job: Job, needle: NeedleBehaviour, seen: readonly VacuumPull[]): Said | undefined {
  if (!ripples.has(needle)) return undefined
  const cylinders = cylindersOf(job.layout).length
  const swing = swingOf(job, seen)
  const call = swing && againstMaximum(swing.value, swing.plusMinus, naturalRipple(cylinders))
  const few = cylinders <= 6
  if (call === 'within' && (few || needle === 'small flicker'))
    return {
      verdict: 'within',
      why: `An even ripple of this size is natural on ${engineOf(cylinders)}.`,
      source: rippleSource,
    }
  if (call !== undefined || !few) return undefined
  if (cylinders > 4 && needle === 'fast vibration') return undefined
  return {
    verdict: 'noted',
    why: `${cylinders > 4 ? 'A trace of ripple' : 'An even ripple'} is natural on ${engineOf(cylinders)} and no fault. Note its lowest and highest point, and whether it stays even as speed rises.`,
    source: rippleSource,
  }
}

/** The table's numbers are for idle at sea level; away from idle only the behaviour counts. */
function meaningOf(job: Job, phase: VacuumPhase, needle: NeedleBehaviour, seen: readonly VacuumPull[]): Said {
  const reading = median(seen.map(pull => inHg(pull.entry.reading)))
  const swing = swingOf(job, seen)
  const rows = needleRows(
    needle,
    phase === 'idle'
      ? {
          reading: tidy(reading + fallOf(atmosphereOf(job.circumstances))),
          below: tidy(idleExpectation(job).low - reading),
          ...(swing ? { swing: swing.value } : {}),
        }
      : {},
  )
  const standing = rows.length > 0 ? rows : needleRows(needle, {})
  const { causes, source } = rowWords(standing)
  const few =
    ripples.has(needle) && cylindersOf(job.layout).length <= 6
      ? ' Few cylinders make an even ripple of their own.'
      : ''
  return { verdict: 'watch', why: `Usually ${causes}.${few}`, source }
}
