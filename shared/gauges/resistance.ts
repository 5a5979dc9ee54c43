// Resistance of lead, coil and plug: against a range typed from the service information, or beside the sister parts.
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { againstMaximum, againstMinimum, type Call } from './calling.ts'
import type { Gauge } from './gauge.ts'
import { judgeLeads } from './lead-resistance.ts'
import { median } from './middle.ts'
import { ohmsShown, ohmsWords } from './ohms.ts'
import {
  type OpenResistance,
  type ReadResistance,
  type ResistancePart,
  resistanceValues,
} from './resistance-values.ts'
import { sources } from './sources.ts'
import { byCylinder, type CylinderVerdict } from './verdict.ts'

/** One maker's limit for the insulation of a plug. */
const insulationOhms = 10e6
const plugOhms = { resistor: 5000, plainAtMost: 10, doubtfulFrom: 20_000 } as const

/** A typed range wins over every other rule for its part. */
export function judgeResistance(job: Job, stage: Stage): CylinderVerdict[] {
  const values = resistanceValues(job, stage)
  const read = values.filter(one => one.ohms !== null)
  const free = read.filter(one => one.specified === undefined)
  const of = (part: ResistancePart) => free.filter(one => one.part === part)
  return [
    ...values.flatMap(one => (one.ohms === null ? [opened(one, stage)] : [])),
    ...(stage === 'after repair' ? read.flatMap(one => mended(one, job)) : []),
    ...read.flatMap(one => typedRange(one, stage)),
    ...judgeLeads(of('lead'), stage),
    ...coils(of('coil primary'), stage),
    ...coils(of('coil secondary'), stage),
    ...of('plug').map(one => plug(one, stage)),
    ...of('plug insulation').map(one => insulation(one, stage)),
  ].toSorted((a, b) => byCylinder(a, b) || (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0))
}

const base = (rule: string, { cylinder }: { cylinder: number }, stage: Stage) =>
  ({ test: 'resistance', rule, cylinder, stage }) as const

const openWhy: Readonly<Record<ResistancePart, string>> = {
  lead: 'Open: broken inside or at an end. Do not run with it, an open lead drives the coil to its maximum.',
  'coil primary': 'Open: no current can build up. Check that the meter reached the right pins.',
  'coil secondary':
    'Open, or a coil with a diode or driver inside that no ohmmeter can measure: the service information tells.',
  plug: 'Open: the resistor inside is burnt out, or the terminal is loose.',
  'plug insulation': 'No path to the shell: the insulation is sound.',
}

/** Open is what insulation should be, and what many modern coils show when nothing is wrong with them. */
const opened = (one: OpenResistance, stage: Stage): CylinderVerdict => ({
  ...base(`${one.part}, path`, one, stage),
  value: 0,
  unit: 'path',
  verdict:
    one.part === 'plug insulation'
      ? 'within'
      : one.part === 'coil secondary' && one.specified === undefined
        ? 'cannot be called'
        : 'outside',
  limit: one.part === 'plug insulation' ? 'no path to the shell' : 'a path from end to end',
  why: openWhy[one.part],
  source: sources.practice,
})

/** What was open as found and now has a path: the same rule, so that before and after stand side by side. */
function mended(one: ReadResistance, job: Job): CylinderVerdict[] {
  const before = resistanceValues(job, 'as found').find(
    other => other.cylinder === one.cylinder && other.part === one.part,
  )
  if (before?.ohms !== null || one.part === 'plug insulation') return []
  return [
    {
      ...base(`${one.part}, path`, one, 'after repair'),
      value: 1,
      unit: 'path',
      verdict: 'noted',
      limit: 'a path from end to end',
      why: `Open as found, ${ohmsWords(one.ohms)} now.`,
      source: sources.practice,
    },
  ]
}

function typedRange(one: ReadResistance, stage: Stage): CylinderVerdict[] {
  if (one.specified === undefined) return []
  const { minimum, maximum } = one.specified
  if (minimum > maximum) return [contradicting(one, stage)]
  const low = againstMinimum(one.ohms, one.plusMinus, minimum)
  const high = againstMaximum(one.ohms, one.plusMinus, maximum)
  const verdict: Call =
    low === 'outside' || high === 'outside'
      ? 'outside'
      : low === 'within' && high === 'within'
        ? 'within'
        : 'cannot be called'
  const side =
    low === 'outside'
      ? ', below the range: a short'
      : high === 'outside'
        ? ', above the range: a bad joint'
        : ''
  return [
    {
      ...base(`${one.part}, specified`, one, stage),
      ...ohmsShown(one.ohms, one.plusMinus),
      verdict,
      limit: `${ohmsWords(minimum)} to ${ohmsWords(maximum)}`,
      why: `${ohmsWords(one.ohms)}${side}.${
        verdict === 'cannot be called'
          ? ' Too near the limit for this meter: take its own leads off, measure again.'
          : ''
      }${verdict === 'within' ? ' A coil or lead can still fail hot or at high voltage.' : ''}`,
      source: sources.typed,
    },
  ]
}

const contradicting = (one: ReadResistance, stage: Stage): CylinderVerdict => ({
  ...base(`${one.part}, specified`, one, stage),
  ...ohmsShown(one.ohms, one.plusMinus),
  verdict: 'cannot be called',
  limit: 'one range for all readings of this part',
  why: 'The ranges typed with its readings do not meet. Type the one that holds.',
  source: sources.typed,
  about: 'reading',
})

/** Nothing is judged without a range: coils differ too much. */
const coils = (parts: readonly ReadResistance[], stage: Stage): CylinderVerdict[] =>
  parts.map(one => {
    const others = parts.filter(other => other.cylinder !== one.cylinder).map(other => other.ohms)
    return {
      ...base(one.part, one, stage),
      ...ohmsShown(one.ohms, one.plusMinus),
      verdict: 'noted',
      limit: "the maker's table only: coils differ",
      why: `${ohmsWords(one.ohms)}${
        others.length > 0
          ? ` beside a middle of ${ohmsWords(median(others))} in its sisters.`
          : '; measure a sister coil as cold or as warm and compare.'
      } Many modern coils cannot be measured this way.`,
      source: sources.practice,
    }
  })

function plug(one: ReadResistance, stage: Stage): CylinderVerdict {
  const kind =
    one.ohms <= plugOhms.plainAtMost
      ? 'a plain plug, or a resistor plug that is shorted'
      : one.ohms < plugOhms.doubtfulFrom
        ? 'as a resistor plug'
        : 'far more than a resistor plug has: its resistor may be failing'
  return {
    ...base('plug', one, stage),
    ...ohmsShown(one.ohms, one.plusMinus),
    verdict: one.ohms >= plugOhms.doubtfulFrom ? 'watch' : 'noted',
    limit: `resistor plugs about ${ohmsWords(plugOhms.resistor)}, plain ones near nought; from ${ohmsWords(plugOhms.doubtfulFrom)} on we say so`,
    why: `${ohmsWords(one.ohms)} from terminal to electrode: ${kind}.`,
    source: 'articles on plug wires and plugs; the upper figure is ours',
  }
}

function insulation(one: ReadResistance, stage: Stage): CylinderVerdict {
  const verdict = againstMinimum(one.ohms, one.plusMinus, insulationOhms)
  return {
    ...base('plug insulation', one, stage),
    ...ohmsShown(one.ohms, one.plusMinus),
    verdict,
    limit: `at least ${ohmsWords(insulationOhms)}, one maker's limit`,
    why: `${ohmsWords(one.ohms)} from electrode to shell${
      verdict === 'within'
        ? '.'
        : verdict === 'outside'
          ? ': current leaks through soot, fuel or a crack. Clean or dry it and measure again before calling it.'
          : ': too near the limit for this meter.'
    }`,
    source: 'Toyota/Lexus spark plug inspection pages (2005-2006)',
  }
}

export const resistanceGauge: Gauge = {
  test: 'resistance',
  title: 'Resistance of leads, coils and plugs',
  cautions: [
    'Key off and connector apart before an ohmmeter goes on: a coil that is switched gives 30 to 50 kV.',
    'Never pull a live lead by hand. A pacemaker wearer stays away from running ignition.',
    'A plug and a manifold that just ran burn.',
  ],
  steps: [
    "Touch the meter's leads together first and take what they show off small readings.",
    'Lead: length as well as ohms. Bend and tug it while it reads. Compare with its sisters.',
    'Coil: pins and range from the service information; type the range with the reading. Say nothing of a coil without.',
    'Plug: terminal to electrode, about 5 kΩ for a resistor plug. Insulation: electrode to shell, 10 MΩ or more.',
  ],
  judge: judgeResistance,
}
