// The head of the report: vehicle, engine and what the readings depend on.
import type { UnitChoice } from '../contract/settings-schema.ts'
import type { Job } from '../job/job-schema.ts'
import { formatAltitude, formatDistance, formatPressure, formatVacuum } from '../units/format.ts'

/** Label and value, nothing for what was not noted. */
export function factsOf(job: Job, units: UnitChoice, shop: string): [label: string, value: string][] {
  const { engine, circumstances } = job
  const { specification } = circumstances
  const pressure = (quantity: Parameters<typeof formatPressure>[0]) =>
    formatPressure(quantity, units.pressure)
  const facts: [string, string | undefined][] = [
    ['Shop', shop],
    ['Vehicle', engine.vehicle],
    ['VIN', engine.vin],
    [
      engine.odometer?.unit === 'h' ? 'Running hours' : 'Odometer',
      engine.odometer && formatDistance(engine.odometer, units.distance),
    ],
    ['Engine', job.layout.name],
    ['Firing order', job.layout.firingOrder.join('-')],
    ['Date', job.createdAt.slice(0, 10)],
    ['Technician', job.technician],
    ['Altitude', circumstances.altitude && formatAltitude(circumstances.altitude, units.altitude)],
    ['Barometer', circumstances.barometer && formatVacuum(circumstances.barometer, units.vacuum)],
    ['Engine warm', yesNo(circumstances.engineWarm)],
    [
      'Specified compression',
      specification?.compressionMinimum && `at least ${pressure(specification.compressionMinimum)}`,
    ],
    [
      'Specified spread',
      specification?.compressionSpread && `at most ${pressure(specification.compressionSpread)}`,
    ],
  ]
  return facts.flatMap(([label, value]) => (value ? [[label, value]] : []))
}

const yesNo = (fact: boolean | undefined): string | undefined =>
  fact === undefined ? undefined : fact ? 'yes' : 'no'
