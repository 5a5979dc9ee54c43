// Each injector's click and drive pulse, and its resistance beside its sisters.
import { cylindersOf } from '../engine/relations.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { PullOf } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import type { InjectorEntry } from './fuel-entries.ts'
import type { Gauge } from './gauge.ts'
import { median } from './middle.ts'
import { ohmsShown, ohmsWords } from './ohms.ts'
import { byCylinder, type CylinderVerdict } from './verdict.ts'

type Click = NonNullable<InjectorEntry['click']>
type Injector = { cylinder: number; click?: Click; pulse?: boolean; ohms?: number; readings: number }

const worstFirst: readonly Click[] = ['none', 'faint', 'clear']
const source = 'common practice'

/** By cylinder; of several checks the worst counts. */
export function judgeInjector(job: Job, stage: Stage): CylinderVerdict[] {
  const pulls = validPulls(job, 'injector', stage)
  const injectors = cylindersOf(job.layout).flatMap(cylinder =>
    injectorOf(
      cylinder,
      pulls.filter(pull => pull.cylinder === cylinder),
    ),
  )
  const pulsed = injectors.filter(one => one.pulse !== undefined)
  const noneAtAll = pulsed.length > 1 && pulsed.every(one => one.pulse === false)
  return [
    ...injectors.flatMap(one => clicks(one, stage)),
    ...injectors.flatMap(one => pulses(one, noneAtAll, stage)),
    ...injectors.flatMap(one => coil(one, injectors, stage)),
  ].toSorted(byCylinder)
}

function injectorOf(cylinder: number, pulls: readonly PullOf<'injector'>[]): Injector[] {
  if (pulls.length === 0) return []
  const entries = pulls.map(pull => pull.entry)
  const click = worstFirst.find(kind => entries.some(entry => entry.click === kind))
  const pulse = entries.flatMap(entry => entry.pulse ?? [])
  const ohms = entries.flatMap(entry => entry.ohms ?? [])
  return [
    {
      cylinder,
      readings: pulls.length,
      ...(click === undefined ? {} : { click }),
      ...(pulse.length === 0 ? {} : { pulse: pulse.every(Boolean) }),
      ...(ohms.length === 0 ? {} : { ohms: median(ohms) }),
    },
  ]
}

const base = (rule: string, { cylinder, readings }: Injector, stage: Stage) =>
  ({
    test: 'injector',
    rule,
    cylinder,
    stage,
    value: readings,
    unit: readings === 1 ? 'check' : 'checks',
    source,
  }) as const

function clicks(one: Injector, stage: Stage): CylinderVerdict[] {
  if (one.click === undefined) return []
  return [
    {
      ...base('click', one, stage),
      verdict: one.click === 'none' ? 'outside' : one.click === 'faint' ? 'watch' : 'noted',
      limit: 'clicks as its sisters do',
      why:
        one.click === 'clear'
          ? 'Clicks: it is driven and moves. How much it sprays is the balance test.'
          : `${one.click === 'none' ? 'No click' : 'A faint click'}: ${
              one.pulse === true
                ? 'it is driven, so the injector itself: winding or stuck needle.'
                : one.pulse === false
                  ? 'it is not driven; look at the drive first.'
                  : 'look for the drive pulse at its plug before calling the injector.'
            }`,
    },
  ]
}

function pulses(one: Injector, noneAtAll: boolean, stage: Stage): CylinderVerdict[] {
  if (one.pulse === undefined) return []
  return [
    {
      ...base('drive pulse', one, stage),
      verdict: one.pulse ? 'noted' : 'outside',
      limit: 'a test lamp made for it flickers at its plug',
      why: one.pulse
        ? 'Driven.'
        : noneAtAll
          ? 'No injector is driven: feed, fuse, crank signal or immobiliser, which all share.'
          : 'Not driven, while the injector may be sound: feed, wiring, driver.',
    },
  ]
}

/** Resistances differ from type to type, so sisters tell: more than a quarter apart is our figure. */
function coil(one: Injector, injectors: readonly Injector[], stage: Stage): CylinderVerdict[] {
  const { ohms } = one
  if (ohms === undefined) return []
  const others = injectors.flatMap(other =>
    other.cylinder !== one.cylinder && other.ohms !== undefined ? [other.ohms] : [],
  )
  const usual = others.length > 0 ? median(others) : undefined
  const { value, unit } = ohmsShown(ohms, 0)
  const apart = usual !== undefined && Math.abs(ohms - usual) > Math.max(0.25 * usual, 0.5)
  return [
    {
      ...base('winding', one, stage),
      value,
      unit,
      verdict: apart ? 'watch' : 'noted',
      limit: "the maker's range; beside its sisters within a quarter, which is our figure",
      why: `${ohmsWords(ohms)}${
        usual === undefined
          ? '; measure its sisters too.'
          : ` beside a middle of ${ohmsWords(usual)}${apart ? ': it stands out.' : '.'}`
      }`,
    },
  ]
}

export const injectorGauge: Gauge = {
  test: 'injector',
  title: 'Injector click and pulse',
  cautions: [
    'Turning fan and belts, hot exhaust: sleeves and hair tied, exhaust extraction on.',
    'Key off before a plug comes off. Direct injectors are driven with 50 V and more: no test lamp on those.',
    'A look at the spray puts fuel into the open: ventilate, no flame or spark near, relieve the pressure first.',
  ],
  steps: [
    'Listen at each injector with a stethoscope at idle or cranking: clear, faint or none.',
    'A lamp made for injectors at the plug: does it flicker?',
    'Key off: ohms across each injector, all at the same temperature.',
  ],
  judge: judgeInjector,
}
