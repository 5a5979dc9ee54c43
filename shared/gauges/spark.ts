// The spark at a tester, and where it runs off instead. A spark in air is no proof of a spark under compression.
import { cylindersOf } from '../engine/relations.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { toLength } from '../units/convert.ts'
import { formatLength, withUnit } from '../units/format.ts'
import type { Gauge } from './gauge.ts'
import type { SparkEntry } from './ignition-entries.ts'
import { inWords, round } from './shown.ts'
import { byCylinder, type CylinderVerdict, type Verdict } from './verdict.ts'

type Kind = SparkEntry['spark']
type Place = NonNullable<SparkEntry['tracks']>

const worstFirst: readonly Kind[] = ['none', 'intermittent', 'weak', 'strong']

const testerSource = 'articles on spark testers; common practice'

/** One verdict a cylinder and tester setting, the worst spark of several tries; one for where it tracks. */
export function judgeSpark(job: Job, stage: Stage): CylinderVerdict[] {
  const here = new Set(cylindersOf(job.layout))
  const sparks = validPulls(job, 'spark', stage)
    .filter(pull => here.has(pull.cylinder))
    .map(({ cylinder, entry }) => ({ cylinder, entry, setting: settingOf(entry) }))
  const groups = new Map<string, typeof sparks>()
  for (const one of sparks) {
    const key = `${one.cylinder} ${one.setting}`
    groups.set(key, [...(groups.get(key) ?? []), one])
  }
  const allFail = (setting: string) => {
    const alike = sparks.filter(one => one.setting === setting)
    return new Set(alike.map(one => one.cylinder)).size > 1 && alike.every(one => one.entry.spark === 'none')
  }
  return [
    ...[...groups.values()].flatMap(([first, ...more]) =>
      first
        ? [
            atTester(
              first,
              [first, ...more].map(one => one.entry.spark),
              allFail(first.setting),
              stage,
            ),
          ]
        : [],
    ),
    ...tracking(sparks, stage),
  ].toSorted((a, b) => byCylinder(a, b) || (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0))
}

/** The voltage that a tester asks for says more than its gap; in millimetres, so that one gap has one name. */
function settingOf({ gap, kilovolts }: SparkEntry): string {
  if (kilovolts !== undefined) return ` at ${withUnit(String(round(kilovolts)), 'kV')}`
  if (gap === undefined) return ''
  return ` at ${formatLength({ value: round(toLength(gap, 'mm'), 2), unit: 'mm' }, 'mm')}`
}

function atTester(
  { cylinder, setting }: { cylinder: number; setting: string },
  kinds: readonly Kind[],
  all: boolean,
  stage: Stage,
): CylinderVerdict {
  const worst = worstFirst.find(kind => kinds.includes(kind)) ?? 'strong'
  const mixed = new Set(kinds).size > 1 ? ` Of ${kinds.length} tries the worst counts.` : ''
  const open = setting === '' ? ' Say at what gap or voltage, or it compares with nothing.' : ''
  return {
    test: 'spark',
    rule: `spark${setting}`,
    cylinder,
    stage,
    value: kinds.filter(kind => kind === worst).length,
    unit: `of ${kinds.length}: ${worst}`,
    verdict: verdictOf[worst],
    limit: 'jumps the tester blue and steady',
    why: `${all ? commonCause : whyOf[worst]}${mixed}${open}`,
    source: testerSource,
  }
}

const verdictOf: Readonly<Record<Kind, Verdict>> = {
  none: 'outside',
  intermittent: 'watch',
  weak: 'watch',
  strong: 'noted',
}

const whyOf: Readonly<Record<Kind, string>> = {
  none: 'No spark at the tester while it turned: lead, coil, its feed, its trigger or the earth of the tester. Try a cylinder that has one.',
  intermittent: 'The spark comes and goes: connections, coil when hot, trigger.',
  weak: 'Weak or yellow to orange: coil, its feed or its earth. Compare with a good cylinder at the same setting.',
  strong:
    'Strong in air. Under compression the gap asks for more: this is no proof that it fires in the cylinder.',
}
const commonCause =
  'No cylinder sparks at this setting: look at what all share first: feed, trigger, immobiliser, and whether the tester was earthed.'

/** One verdict a cylinder, so that "none seen" after a repair answers what was seen before it. */
function tracking(
  sparks: readonly { cylinder: number; entry: SparkEntry }[],
  stage: Stage,
): CylinderVerdict[] {
  return [...new Set(sparks.map(one => one.cylinder))].flatMap((cylinder): CylinderVerdict[] => {
    const looked = sparks.flatMap(one => (one.cylinder === cylinder ? (one.entry.tracks ?? []) : []))
    if (looked.length === 0) return []
    const seen = [...new Set(looked.filter(place => place !== 'none seen'))].toSorted()
    return [
      {
        test: 'spark',
        rule: 'tracking',
        cylinder,
        stage,
        value: looked.filter(place => place !== 'none seen').length,
        unit: `of ${looked.length}: ${seen.length === 0 ? 'none seen' : inWords(seen)}`,
        verdict: seen.length === 0 ? 'noted' : 'outside',
        limit: 'no arc but at the gap',
        why: (seen.length === 0 ? ['none seen' as const] : seen).map(place => trackWhy[place]).join(' '),
        source:
          'General Motors spark plug inspection pages (2001, 2006) for boot and insulator; common practice',
      },
    ]
  })
}

const trackWhy: Readonly<Record<Place, string>> = {
  'none seen': 'No arc seen. Look in the dark, with a mist of water: a dry lead may hide it.',
  boot: 'Arcs through the boot: renew the boot with the plug, both carry the track. Oil or water in the well starts it.',
  'plug insulator':
    'Flashes over the insulator: renew plug and boot together; look for oil or water in the well.',
  lead: 'Leaves the lead for metal or a neighbour: renew the lead, route it clear.',
  coil: 'Tracks on the coil: its case is punctured or carbon-tracked, often after an open lead.',
  'distributor cap or rotor':
    'Tracks in the cap or on the rotor: look for a misfire at a neighbouring tower too.',
}

export const sparkGauge: Gauge = {
  test: 'spark',
  title: 'Spark',
  cautions: [
    'Coils reach 30 to 50 kV and can injure; a pacemaker wearer stays away from running ignition.',
    'Clamp the earth of the tester first. Never hold or pull a live lead by hand; one hand only, the other behind the back.',
    'Never crank or run with an open lead: the coil climbs to its maximum and can puncture. Cap or earth every loose one.',
    'Disable injection, keep fuel and vapour away, ventilate, extinguisher at hand: what sprays from a plug hole burns.',
  ],
  steps: [
    'Set the tester to a stated gap or voltage, clamp its earth, join it to the lead or coil.',
    'Crank, or run briefly: strong is blue and steady. Write the gap or the kilovolts down with it.',
    'Same setting on a cylinder that runs well, then on the doubtful one.',
    'In the dark, with a mist of water from a distance and hands away: does it track, and where?',
  ],
  judge: judgeSpark,
}
