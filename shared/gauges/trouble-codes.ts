// Trouble codes: those of the misfire monitor name a cylinder; all others are noted as they were read.
import { cylindersOf } from '../engine/relations.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import type { Gauge } from './gauge.ts'
import type { TroubleCodesEntry } from './scan-entries.ts'
import { misfireCodes } from './trouble-code-words.ts'
import type { GaugeVerdict } from './verdict.ts'

type Code = TroubleCodesEntry['codes'][number]
type State = NonNullable<Code['state']>

const source =
  'misfire monitor descriptions (Toyota 2004, Volvo 2009) for P0301 to P0304; rest of the series: SAE J2012 from memory'

/** All codes of one stage; after the repair also those that were found before and are not read any more. */
export function judgeTroubleCodes(job: Job, stage: Stage): GaugeVerdict[] {
  const readings = validPulls(job, 'trouble codes', stage)
  if (readings.length === 0) return []
  const codes = codesOf(job, stage)
  const verdicts = [...codes].map(([code, states]) => verdictOf(code, states, job, stage))
  const gone = stage === 'after repair' ? goneCodes(job, codes) : []
  const none: GaugeVerdict[] =
    codes.size === 0
      ? [
          {
            ...common('codes', stage),
            value: 0,
            verdict: 'noted',
            limit: 'none read',
            why: 'No code read. A misfire that comes and goes, or codes cleared lately, leave none.',
            source: 'common practice',
          },
        ]
      : []
  return [...none, ...verdicts, ...gone].toSorted(
    (a, b) => (a.cylinder ?? 0) - (b.cylinder ?? 0) || (a.rule < b.rule ? -1 : 1),
  )
}

const common = (rule: string, stage: Stage) =>
  ({ test: 'trouble codes', rule, stage, value: 1, unit: 'code' }) as const

/** Each code once, with every state it was read in. */
function codesOf(job: Job, stage: Stage): Map<string, Set<State>> {
  const codes = new Map<string, Set<State>>()
  for (const { entry } of validPulls(job, 'trouble codes', stage))
    for (const { code, state = 'stored' } of entry.codes)
      codes.set(code, (codes.get(code) ?? new Set<State>()).add(state))
  return codes
}

function verdictOf(code: string, states: ReadonlySet<State>, job: Job, stage: Stage): GaugeVerdict {
  const misfire = misfireCodes[code]
  const said = [...states].toSorted().join(', ')
  if (!misfire)
    return {
      ...common(code, stage),
      verdict: 'noted',
      limit: 'its meaning is in the service information',
      why: `Read as ${said}; not a misfire code of one cylinder.`,
      source: 'common practice',
    }
  const { cylinder } = misfire
  if (cylinder !== null && !cylindersOf(job.layout).includes(cylinder))
    return {
      ...common(code, stage),
      verdict: 'noted',
      limit: 'names a cylinder of this engine',
      why: `Names cylinder ${cylinder}, which this engine does not have. Check layout and code.`,
      source,
      about: 'reading',
    }
  const onlyPending = states.size === 1 && states.has('pending')
  return {
    ...common(code, stage),
    ...(cylinder === null ? {} : { cylinder }),
    verdict: onlyPending ? 'watch' : 'outside',
    limit: 'no misfire code set',
    why: `${cylinder === null ? 'Random misfire, or several cylinders' : `Misfire of cylinder ${cylinder}`}, ${said}. ${
      onlyPending ? 'Pending: seen in one drive, not yet confirmed. ' : ''
    }It says where, never why; on some makes the number follows the firing order.`,
    source,
  }
}

/** A code that is gone was cleared, or did not come back: only a monitor that ran since can tell. */
function goneCodes(job: Job, now: ReadonlyMap<string, unknown>): GaugeVerdict[] {
  return [...codesOf(job, 'as found').keys()].flatMap((code): GaugeVerdict[] => {
    const misfire = misfireCodes[code]
    if (!misfire || now.has(code)) return []
    const { cylinder } = misfire
    if (cylinder !== null && !cylindersOf(job.layout).includes(cylinder)) return []
    const counts = validPulls(job, 'misfire counts', 'after repair').filter(
      pull => cylinder === null || pull.cylinder === cylinder,
    )
    const clean = counts.length > 0 && counts.every(pull => pull.entry.count === 0)
    return [
      {
        ...common(code, 'after repair'),
        value: 0,
        ...(cylinder === null ? {} : { cylinder }),
        verdict: clean ? 'within' : 'cannot be called',
        limit: 'no misfire code, with the monitor run since the work',
        why: clean
          ? 'Not set any more, and the misfire counts after the work are nought.'
          : 'Not read any more. Clearing wipes it too: drive as the complaint says, then read codes, pending ones as well, and misfire counts.',
        source: 'common practice',
      },
    ]
  })
}

export const troubleCodesGauge: Gauge = {
  test: 'trouble codes',
  title: 'Trouble codes',
  cautions: [
    'A flashing lamp means misfires that can overheat the catalyst: do not drive on like that.',
    "Reading on the road is a second person's work.",
  ],
  steps: [
    'Read stored, pending and permanent codes, and the freeze frame, before anything is cleared.',
    'Write every code down as it was read, other than misfire codes too.',
    'Clearing wipes counts and readiness: say so to the customer.',
    'After the repair: drive as the complaint says, then read again, pending codes too.',
  ],
  judge: judgeTroubleCodes,
}
