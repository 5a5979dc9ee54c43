// Service 06: the vehicle's own test results with its own limits, by cylinder where the misfire monitors name one.
import { cylindersOf } from '../engine/relations.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import type { Gauge } from './gauge.ts'
import { countLimit, countSource } from './misfire-compare.ts'
import { type CountCall, callCounters } from './mode-06-counts.ts'
import { decodeMode06, type MonitorTest } from './mode-06-decode.ts'
import { hexByte } from './mode-06-lines.ts'
import { generalMisfire, misfireCylinder, testName } from './mode-06-monitors.ts'
import { unreadLines } from './mode-06-unread.ts'
import { round } from './shown.ts'
import { isKnownScaling, scalingOf } from './unit-and-scaling.ts'
import type { GaugeVerdict } from './verdict.ts'

const source =
  'SAE J1979 / ISO 15031-5 as restated in service information (2004, 2012) and a 2005 OBD summary; limits sent by the vehicle'

/** Every test that was read, the latest of each, and every line that could not be read. */
export function judgeMode06(job: Job, stage: Stage): GaugeVerdict[] {
  const readings = validPulls(job, 'mode 06', stage)
    .toSorted((a, b) => compareTexts(a.at, b.at) || compareTexts(a.entry.hex, b.entry.hex))
    .map(pull => decodeMode06(pull.entry.hex))
  const tests = latestOfEach(readings.flatMap(one => one.tests))
  const cylinders = new Set(cylindersOf(job.layout))
  const counters = callCounters(
    tests.map(one => one.test),
    cylinders,
    stage,
  )
  return [
    ...tests.map(({ name, test }) => verdictOf(name, test, counters.get(test), cylinders, stage)),
    ...unreadLines(readings, stage),
  ].toSorted(byCylinderThenRule)
}

type Named = { name: string; test: MonitorTest }

/** Two modules can answer alike: then each name says from where. */
function latestOfEach(tests: readonly MonitorTest[]): Named[] {
  const latest = new Map(tests.map(test => [`${test.mid} ${test.tid} ${test.from ?? ''}`, test] as const))
  const all = [...latest.values()]
  const modules = new Map<string, number>()
  for (const { mid, tid } of all) {
    const name = testName(mid, tid)
    modules.set(name, (modules.get(name) ?? 0) + 1)
  }
  return all.map(test => {
    const name = testName(test.mid, test.tid)
    return {
      name: (modules.get(name) ?? 0) > 1 ? `${name} from ${test.from ?? 'a module without id'}` : name,
      test,
    }
  })
}

function verdictOf(
  name: string,
  test: MonitorTest,
  count: CountCall | undefined,
  cylinders: ReadonlySet<number>,
  stage: Stage,
): GaugeVerdict {
  const cylinder = misfireCylinder(test.mid)
  const { digits } = scalingOf(test.uas)
  const base = {
    test: 'mode 06' as const,
    rule: name,
    stage,
    value: round(test.value, digits),
    unit: test.unit,
    limit: limitOf(test, digits),
    source,
  }
  if (cylinder !== null && !cylinders.has(cylinder))
    return {
      ...base,
      verdict: 'noted',
      why: `Says cylinder ${cylinder}, which this engine does not have. Check layout and paste.`,
      about: 'reading',
    }
  const place = cylinder === null ? {} : { cylinder }
  if (test.state === 'not run')
    return {
      ...base,
      ...place,
      verdict: 'cannot be called',
      why: 'Value and both limits are nought: not completed since the codes were cleared. It does not mean that nothing misfired.',
      about: 'reading',
    }
  if (count) return { ...base, ...place, limit: countLimit, source: countSource, ...count }
  if (test.open)
    return { ...base, ...place, verdict: 'noted', why: 'The limits sent are open: they carry no verdict.' }
  return {
    ...base,
    ...place,
    verdict: test.state === 'pass' ? 'within' : 'outside',
    why: whyOf(test, cylinder),
  }
}

const limitOf = (test: MonitorTest, digits: number): string =>
  test.state === 'not run'
    ? 'none sent'
    : `${round(test.min, digits)} to ${round(test.max, digits)} ${test.unit}, as sent by the vehicle`

function whyOf(test: MonitorTest, cylinder: number | null): string {
  const scale = isKnownScaling(test.uas)
    ? ''
    : ` Unit ${hexByte(test.uas)} is not in our table: shown as it came, compared with its limits all the same.`
  const end =
    test.state === 'pass'
      ? 'The vehicle calls it passed.'
      : 'The vehicle calls it failed, whether or not it has set a code. It says where, never why.'
  const what =
    cylinder !== null
      ? "What this test measures is the maker's to say; usually a rate of misfires."
      : test.mid === generalMisfire
        ? 'General misfire monitor: makers put other things here too, such as a temperature; its unit tells.'
        : 'What this monitor measures is in the service information.'
  return `${end} ${what}${scale}`
}

const compareTexts = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

const byCylinderThenRule = (a: GaugeVerdict, b: GaugeVerdict): number =>
  (a.cylinder ?? 0) - (b.cylinder ?? 0) || compareTexts(a.rule, b.rule)

export const mode06Gauge: Gauge = {
  test: 'mode 06',
  title: 'Service 06',
  cautions: [
    "Driving and reading are two people's work: nobody reads a screen at the wheel.",
    'Do not run a misfiring engine long: raw fuel overheats the catalyst.',
  ],
  steps: [
    'Key on; read service 06 of monitors A1 to AD before anything is cleared: clearing wipes counts and readiness.',
    'Paste the answers as they came, frames or payloads, one a line. Only the format on CAN is read.',
    'Average (test 0B) with nothing in this drive (0C) is history; nought with limits of nought has not run at all.',
    'Some makes number counters by firing order: prove once by unplugging one injector and see which counter rises.',
  ],
  judge: judgeMode06,
}
