// Patterns of the plugs across the engine: all alike, one bank alike, oil in one well only.
import { cylindersOf } from '../engine/relations.ts'
import { inWords } from '../gauges/shown.ts'
import type { Job } from '../job/job-schema.ts'
import type { Condition } from '../plug/condition.ts'
import type { EngineRemark } from './engine-remarks.ts'
import type { PlugReading } from './plug-evidence.ts'

type Family = { name: string; of: readonly Condition[]; think: string; source: string }

/** Conditions that have a common cause when every plug shows them. */
const families: readonly Family[] = [
  {
    name: 'lean',
    of: ['lean'],
    think: 'fuel pressure, the air meter, an intake leak common to all, or plugs too hot',
    source: 'technical articles on fuel trims; common practice',
  },
  {
    name: 'rich or carbon-fouled',
    of: ['rich', 'carbon'],
    think:
      'fuel pressure, a leaking regulator, purge, the air filter or the coolant sensor; short trips and long idling too',
    source: 'US Army TM 10-3930-653-14&P; technical articles on fuel trims; common practice',
  },
  {
    name: 'oil-wetted',
    of: ['oil-wetted'],
    think: 'running-in, blocked crankcase ventilation or general wear',
    source: 'Dodge spark plug conditions page (1998); common practice',
  },
  {
    name: 'ashy',
    of: ['ash'],
    think: 'rings, guides or the breather',
    source: 'Dodge spark plug conditions page (1998); common practice',
  },
]

export function plugPatterns(job: Job, readings: readonly PlugReading[]): EngineRemark[] {
  return [...families.flatMap(family => familyPattern(job, readings, family)), ...oneWell(job, readings)]
}

function familyPattern(job: Job, readings: readonly PlugReading[], family: Family): EngineRemark[] {
  const tagged = readings.filter(one => one.reading.condition !== undefined)
  const alike = new Set(
    tagged
      .filter(({ reading }) => reading.condition !== undefined && family.of.includes(reading.condition))
      .map(one => one.slot.cylinder),
  )
  const read = new Set(tagged.map(one => one.slot.cylinder))
  const all = cylindersOf(job.layout)
  if (all.length > 1 && all.every(one => alike.has(one)))
    return [
      {
        kind: `all ${family.name}`,
        cylinders: all,
        text: `All plugs read ${family.name}: before any one cylinder think of ${family.think}.`,
        plain: 'All plugs look alike in this, so the cause is likely one that all cylinders share.',
        source: family.source,
      },
    ]
  if (job.layout.banks.length < 2) return []
  return job.layout.banks
    .filter(({ cylinders }) => cylinders.length > 1 && cylinders.every(one => alike.has(one)))
    .filter(({ cylinders }) =>
      all.filter(one => !cylinders.includes(one)).every(one => read.has(one) && !alike.has(one)),
    )
    .map(({ name, cylinders }) => ({
      kind: `one bank ${family.name}`,
      cylinders: [...cylinders],
      text: `Every plug of one bank (${name}: ${inWords(cylinders)}) reads ${family.name} and none of the other: look for what that bank has of its own, an air leak, a sensor, the exhaust, the fuel feed.`,
      plain: `The plugs of cylinders ${inWords(cylinders)}, one side of the engine, look alike in this and the others do not, so the cause is likely on that side.`,
      source: 'technical articles on fuel trims; common practice',
    }))
}

function oneWell(job: Job, readings: readonly PlugReading[]): EngineRemark[] {
  const oily = new Set(
    readings
      .filter(
        ({ reading: { details } }) =>
          details.oilInWell === true ||
          (details.deposits ?? []).some(({ kind, place }) => kind === 'wet oil' && place === 'well'),
      )
      .map(one => one.slot.cylinder),
  )
  const [cylinder] = oily
  if (cylinder === undefined || oily.size > 1 || cylindersOf(job.layout).length < 2) return []
  return [
    {
      kind: 'oil in one well',
      cylinders: [cylinder],
      text: `Oil stands in the plug well of cylinder ${cylinder} only: its tube seal.`,
      plain: '',
      source: 'common practice',
    },
  ]
}
