// Running compression: how a cylinder breathes at idle and in a snap, against its own cranking compression and its sisters.
import { cylindersOf } from '../engine/relations.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { againstMaximum, againstMinimum, settle } from './calling.ts'
import { median, tidy } from './middle.ts'
import { type RunningValue, runningValues, type Sure } from './running-compression-values.ts'
import { percentWords, pressureShown, pressureWords, round, type ShownUnits, tradeUnits } from './shown.ts'
import { sources } from './sources.ts'
import { byCylinder, type CylinderVerdict } from './verdict.ts'

/** From memory, no published text: the page says so, and nothing is called outside by them. */
const usual = { snapOfCranking: 80, apart: 20 } as const

type Setting = { stage: Stage; units: ShownUnits }

/** All verdicts that the running-compression pulls of one stage allow, by cylinder. */
export function judgeRunningCompression(
  job: Job,
  stage: Stage,
  units: ShownUnits = tradeUnits,
): CylinderVerdict[] {
  const here = new Set(cylindersOf(job.layout))
  const values = runningValues(job, stage).filter(one => here.has(one.cylinder))
  const setting = { stage, units }
  const testers = new Set(values.flatMap(one => one.testers))
  return [
    ...values.flatMap(one => [
      ...ofCranking(one, 'idle', setting),
      ...ofCranking(one, 'snap', setting),
      ...snapAboveIdle(one, setting),
    ]),
    ...(testers.size > 1
      ? values.map(one => otherTesters(one, testers.size, stage))
      : [...besideSisters(values, 'idle', setting), ...besideSisters(values, 'snap', setting)]),
  ].toSorted(byCylinder)
}

const shareOf = (one: Sure, of: Sure) => ({
  share: tidy((100 * one.psi) / of.psi),
  plusMinus: tidy(100 * Math.hypot(one.plusMinus / of.psi, (one.psi * of.plusMinus) / of.psi ** 2)),
})

/** Only noted: how much of cranking is usual differs between engines, and no published limit was found. */
function ofCranking(one: RunningValue, state: 'idle' | 'snap', { stage, units }: Setting): CylinderVerdict[] {
  const running = one[state]
  if (running === undefined || one.cranking === undefined) return []
  const { share, plusMinus } = shareOf(running, one.cranking)
  return [
    {
      test: 'running compression',
      rule: `${state} of cranking`,
      cylinder: one.cylinder,
      stage,
      value: round(share),
      plusMinus: round(plusMinus),
      unit: '%',
      verdict: 'noted',
      limit:
        state === 'snap'
          ? `no limit: about ${percentWords(usual.snapOfCranking)} is usual; compare with the sisters`
          : 'no limit: well below cranking is usual; compare with the sisters',
      why: `${pressureWords(running.psi, units)} at ${state}, ${pressureWords(one.cranking.psi, units)} cranking.`,
      source: sources.running,
    },
  ]
}

/** A snap fills the cylinder: what does not stand above idle was misread, or the cylinder cannot fill. */
function snapAboveIdle({ cylinder, idle, snap }: RunningValue, { stage, units }: Setting): CylinderVerdict[] {
  if (idle === undefined || snap === undefined) return []
  const plusMinus = tidy(Math.hypot(idle.plusMinus, snap.plusMinus))
  const above = tidy(snap.psi - idle.psi)
  const call = againstMinimum(above, plusMinus, 0)
  return [
    {
      test: 'running compression',
      rule: 'snap above idle',
      cylinder,
      stage,
      ...pressureShown(above, units),
      plusMinus: pressureShown(plusMinus, units).value,
      verdict: call === 'outside' ? 'watch' : call,
      limit: 'the snap stands well above idle',
      why: `Idle ${pressureWords(idle.psi, units)}, snap ${pressureWords(snap.psi, units)}.${
        call === 'outside'
          ? ' A snap below idle: misread, the throttle opened too slowly, or the intake of this cylinder cannot fill it.'
          : settle(call)
      }`,
      source: sources.running,
    },
  ]
}

function besideSisters(
  values: readonly RunningValue[],
  state: 'idle' | 'snap',
  { stage, units }: Setting,
): CylinderVerdict[] {
  const read = values.flatMap(one => (one[state] ? [{ ...one, running: one[state] }] : []))
  return read.flatMap(one => {
    const others = read.filter(other => other !== one).map(other => other.running)
    const middle = { psi: median(others.map(other => other.psi)), plusMinus: 0 }
    if (others.length < 2 || middle.psi <= 0) return []
    middle.plusMinus = median(others.map(other => other.plusMinus))
    const { share, plusMinus } = shareOf(one.running, middle)
    const low = againstMinimum(share, plusMinus, 100 - usual.apart)
    const high = againstMaximum(share, plusMinus, 100 + usual.apart)
    const open = low === 'cannot be called' || high === 'cannot be called'
    const verdict = low === 'outside' || high === 'outside' ? 'watch' : open ? 'cannot be called' : 'within'
    return [
      {
        test: 'running compression',
        rule: `${state} beside sisters`,
        cylinder: one.cylinder,
        stage,
        value: round(share),
        plusMinus: round(plusMinus),
        unit: '%',
        verdict,
        limit: `within about ${percentWords(usual.apart)} of the middle of the others`,
        why: `${pressureWords(one.running.psi, units)} against ${pressureWords(middle.psi, units)} in the middle of the others.${meaning(low === 'outside', high === 'outside')}${settle(verdict)}`,
        source: sources.running,
      },
    ]
  })
}

function meaning(low: boolean, high: boolean): string {
  if (low)
    return ' Low while running: with good cranking compression it breathes in badly (cam lobe, lifter, carbon on the valve).'
  return high ? ' High while running: the exhaust of this cylinder may be restricted.' : ''
}

const otherTesters = ({ cylinder, testers }: RunningValue, count: number, stage: Stage): CylinderVerdict => ({
  test: 'running compression',
  rule: 'one tester',
  cylinder,
  stage,
  value: testers.length,
  unit: testers.length === 1 ? 'tester' : 'testers',
  verdict: 'watch',
  limit: 'cylinders are compared on one tester: gauge and hose volume differ',
  why: `${count} testers were used, so no cylinder is held against its sisters.`,
  source: sources.practice,
  about: 'reading',
})
