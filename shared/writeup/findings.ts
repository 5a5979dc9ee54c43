// Gathers a job into its write-up, for the shop with every reading, for the customer in plain words.
import type { UnitChoice } from '../contract/settings-schema.ts'
import { conditionMap, type CylinderState } from '../diagnosis/condition-map.ts'
import { engineRemarks } from '../diagnosis/engine-remarks.ts'
import { slotKey, slotLabel } from '../engine/slots.ts'
import { deference, gauges } from '../gauges/gauges.ts'
import { shotsOf, validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import { stagesOf } from '../job/stage.ts'
import { formatAltitude, formatDistance, formatVacuum } from '../units/format.ts'
import { measuredTables } from './measured-tables.ts'
import { plainState, summaryOf } from './plain-words.ts'
import { proofOf } from './proof.ts'
import type { Audience, WriteUp, WriteUpPhoto } from './write-up.ts'

const mostPhotos = { shop: 24, customer: 6 } as const

/** Everything the report says, as data. `shop` is the name on the letterhead, may be empty. */
export function writeUp(job: Job, units: UnitChoice, audience: Audience, shop = ''): WriteUp {
  const stage = 'as found'
  const states = conditionMap(job, stage, units)
  const forShop = audience === 'shop'
  const stages = stagesOf(job)
  return {
    audience,
    title: forShop ? 'Plug and cylinder report' : 'What we found on your engine',
    invented: job.demo === true,
    facts: factsOf(job, units, shop),
    complaint: job.complaint || 'No complaint is recorded.',
    summary: summaryOf(states),
    layout: job.layout,
    stage,
    states,
    findings: states.map(one => ({
      cylinder: one.cylinder,
      state: one.state,
      lines: forShop
        ? shopLines(one)
        : [
            plainState(one),
            ...new Set(
              one.evidence
                .filter(evidence => evidence.state !== 'sound' && evidence.from === 'plug')
                .map(evidence => evidence.text),
            ),
          ],
    })),
    engine: engineRemarks(job, stage, units).map(remark =>
      forShop ? `${remark.text} [${remark.source}]` : remark.text,
    ),
    tables: forShop ? stages.flatMap(one => measuredTables(job, one, units)) : [],
    photos: choosePhotos(job, audience),
    repair: job.repair
      ? [job.repair.cause ? `Cause found: ${job.repair.cause}` : '', job.repair.done].filter(
          text => text !== '',
        )
      : [],
    proof: job.repair ? proofOf(job, units) : [],
    notTested: gauges
      .filter(({ test }) => stages.every(one => validPulls(job, test, one).length === 0))
      .map(({ title }) => title),
    cautions: forShop
      ? [deference, ...gauges.flatMap(gauge => gauge.cautions)]
      : ['Do not drive for long with a misfire: unburned fuel overheats the catalyst.', deference],
    note: (forShop ? job.writeUp.noteForShop : job.writeUp.noteForCustomer) ?? '',
  }
}

/** What is notable in full; what is in order in one line. */
function shopLines(one: CylinderState): string[] {
  const notable = one.evidence.filter(evidence => evidence.state !== 'sound')
  const sound = [
    ...new Set(one.evidence.filter(evidence => evidence.state === 'sound').map(evidence => evidence.from)),
  ]
  const lines = notable.map(evidence => `${evidence.from}: ${evidence.text}`)
  if (sound.length > 0) lines.push(`In order: ${sound.join(', ')}.`)
  return lines.length > 0 ? lines : ['Nothing is recorded.']
}

function factsOf(job: Job, units: UnitChoice, shop: string): [string, string][] {
  const { engine, circumstances } = job
  const facts: [string, string | undefined][] = [
    ['Shop', shop],
    ['Vehicle', engine.vehicle],
    ['VIN', engine.vin],
    ['Odometer', engine.odometer && formatDistance(engine.odometer, units.distance)],
    ['Engine', job.layout.name],
    ['Firing order', job.layout.firingOrder.join('-')],
    ['Date', job.createdAt.slice(0, 10)],
    ['Technician', job.technician],
    ['Altitude', circumstances.altitude && formatAltitude(circumstances.altitude, units.altitude)],
    ['Barometer', circumstances.barometer && formatVacuum(circumstances.barometer, units.vacuum)],
    [
      'Engine warm',
      circumstances.engineWarm === undefined ? undefined : circumstances.engineWarm ? 'yes' : 'no',
    ],
  ]
  return facts.flatMap(([label, value]) => (value ? [[label, value]] : []))
}

/** The chosen shots in their order; without a choice the telling ones: faults first, then one of each plug. */
function choosePhotos(job: Job, audience: Audience): WriteUpPhoto[] {
  const chosen = new Set(job.writeUp.shots)
  const photos = job.trays.flatMap(tray =>
    tray.slots.flatMap(slot =>
      slot.shots.map((shot, at) => {
        const address = slot.plug ? { cylinder: slot.cylinder, plug: slot.plug } : { cylinder: slot.cylinder }
        const reading = slot.reading?.condition ?? 'not read'
        return {
          stage: tray.stage,
          cylinder: slot.cylinder,
          first: at === 0,
          shotId: shot.id,
          photo: shot.photo,
          caption: `${slotKey(address)}, ${shot.kind}, ${tray.name.toLowerCase()}: ${reading}${slot.reading?.details.oilInWell ? ', oil in the well' : ''}`,
          alt: `Photo of ${slotLabel(address)}, ${shot.kind}, ${tray.name.toLowerCase()}`,
        }
      }),
    ),
  )
  const strip = ({ shotId, photo, caption, alt }: WriteUpPhoto): WriteUpPhoto => ({
    shotId,
    photo,
    caption,
    alt,
  })
  if (chosen.size > 0) {
    const known = new Set(shotsOf(job).map(shot => shot.id))
    return job.writeUp.shots
      .filter(id => known.has(id))
      .flatMap(id => photos.filter(one => one.shotId === id).map(strip))
  }
  if (audience === 'shop') return photos.slice(0, mostPhotos.shop).map(strip)
  const rank = { fault: 0, watch: 1, unknown: 2, sound: 3 }
  const states = new Map(conditionMap(job, 'as found').map(one => [one.cylinder, rank[one.state]]))
  return photos
    .filter(one => one.first || (states.get(one.cylinder) ?? 3) < 2)
    .toSorted((a, b) => (states.get(a.cylinder) ?? 3) - (states.get(b.cylinder) ?? 3))
    .slice(0, mostPhotos.customer)
    .map(strip)
}
