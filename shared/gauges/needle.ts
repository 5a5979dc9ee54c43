// What a moving vacuum needle usually means; several causes share a pattern, so these never name a part alone.
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { type ShownUnits, vacuumShown } from './shown.ts'
import type { VacuumEntry, VacuumPhase } from './vacuum-entry.ts'
import { inHg, possiblePulls } from './vacuum-values.ts'
import type { GaugeVerdict } from './verdict.ts'

type Needle = Exclude<VacuumEntry['needle'], 'steady' | undefined>
type Meaning = { text: string; source: string }

export const needleMeanings: Partial<Record<Needle, Meaning>> = {
  'regular drop': {
    text: 'Drops in time with the engine: one or more cylinders, not all. Ignition miss, a leaking valve or a head gasket; compression separates them.',
    source: 'US Army Ordnance subcourse OD1001, lesson 3; TM 10-3930-618-20',
  },
  'irregular drop': {
    text: 'Drops now and then: a sticking valve or an ignition miss.',
    source: 'US Army Ordnance subcourse OD1001, lesson 3; TM 10-3930-618-20',
  },
  'fast vibration': {
    text: 'Vibrates fast: worn intake valve guides if it steadies with speed, weak valve springs if it grows. Few cylinders make an even ripple of their own.',
    source: 'US Army TM 9-4910-677-14&P; older workshop vacuum charts',
  },
  'slow float': {
    text: 'Floats slowly: mixture.',
    source: 'US Army Ordnance subcourse OD1001, lesson 3; older workshop vacuum charts',
  },
  'falls away': {
    text: 'Normal at start, then falls while running: exhaust restriction; the faster the fall, the worse.',
    source: 'US Army Ordnance subcourse OD1001, lesson 3; TM 10-3930-618-20',
  },
}

const needles = [
  'regular drop',
  'irregular drop',
  'fast vibration',
  'slow float',
  'falls away',
] as const satisfies readonly Needle[]

/** While cranking the needle flutters by nature; only unevenness says something. */
const crankingUneven: Meaning = {
  text: 'Uneven pulses while cranking: a leak at one or more cylinders (burned or stuck valve, intake leak there, worn guide).',
  source: 'hand vacuum pump manual (MV8500)',
}
const uneven: ReadonlySet<Needle> = new Set(['regular drop', 'irregular drop'])

function meaningOf(phase: VacuumPhase, needle: Needle): Meaning | undefined {
  if (phase === 'snap') return undefined
  if (phase === 'cranking') return uneven.has(needle) ? crankingUneven : undefined
  return needleMeanings[needle]
}

/** One verdict for each behaviour seen in each state of the engine; a steady needle gives none. */
export function judgeNeedle(job: Job, stage: Stage, units: ShownUnits): GaugeVerdict[] {
  return (['idle', '2500 rpm', 'cranking'] as const).flatMap(phase => {
    const pulls = possiblePulls(job, stage, phase)
    const seen = needles.filter(needle => pulls.some(pull => pull.entry.needle === needle))
    return seen.flatMap(needle => {
      const meaning = meaningOf(phase, needle)
      const lowest = Math.min(
        ...pulls.filter(pull => pull.entry.needle === needle).map(pull => inHg(pull.entry.reading)),
      )
      return meaning
        ? [
            {
              test: 'vacuum',
              rule: `needle at ${phase}: ${needle}`,
              stage,
              ...vacuumShown(lowest, units),
              verdict: 'watch',
              limit: phase === 'cranking' ? 'even pulses' : 'a steady needle',
              why: meaning.text,
              source: meaning.source,
            } as const,
          ]
        : []
    })
  })
}
