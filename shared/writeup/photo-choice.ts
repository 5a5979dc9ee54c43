// Which photos the report shows: those a person chose, else the telling ones.
import { conditionMap } from '../diagnosis/condition-map.ts'
import { slotKey, slotLabel } from '../engine/slots.ts'
import { currentReading } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import { stagesInOrder } from '../job/stage.ts'
import type { Shot, Slot, Tray } from '../job/tray-schema.ts'
import type { Audience, WriteUpPhoto } from './write-up.ts'

const mostPhotos = { shop: 24, customer: 6 } as const

type Candidate = {
  shotId: string
  kind: Shot['kind']
  stage: Tray['stage']
  /** 0 for a fault to 3 for a sound cylinder. */
  rank: number
  /** Absent for a photo in the unsorted strip. */
  cylinder?: number
  photo: WriteUpPhoto
}

/** Chosen shots in their order, from the unsorted strip too. Without a choice: faults, then what is watched, then mates. */
export function choosePhotos(job: Job, audience: Audience): WriteUpPhoto[] {
  const all = candidates(job)
  const byId = new Map(all.map(one => [one.shotId, one.photo]))
  const chosen = job.writeUp.shots.flatMap(id => byId.get(id) ?? [])
  if (chosen.length > 0) return chosen
  const laidOut = all.filter(one => one.cylinder !== undefined)
  const picked = audience === 'shop' ? laidOut : forCustomer(laidOut)
  return picked.slice(0, mostPhotos[audience]).map(one => one.photo)
}

/** The plugs that show something, a sound one to compare, and the same cylinders after the repair; then the rest. */
function forCustomer(all: readonly Candidate[]): Candidate[] {
  const found = all.filter(one => one.stage === 'as found')
  const telling = found.filter(one => one.rank < 2).toSorted((a, b) => a.rank - b.rank)
  if (telling.length === 0) return [...all]
  const cylinders = new Set(telling.map(one => one.cylinder))
  const good = found.filter(one => one.rank === ranks.sound && one.kind === 'end-on')
  const after = all.filter(one => one.stage === 'after repair' && cylinders.has(one.cylinder))
  return [...telling.slice(0, 3), ...good.slice(0, 1), ...after.slice(0, 2), ...telling.slice(3)]
}

const ranks = { fault: 0, watch: 1, unknown: 2, sound: 3 } as const

function candidates(job: Job): Candidate[] {
  const states = new Map(
    stagesInOrder.map(stage => [
      stage,
      new Map(conditionMap(job, stage).map(one => [one.cylinder, one.state])),
    ]),
  )
  return job.trays.flatMap(tray => {
    const name = tray.name.toLowerCase()
    const laidOut = tray.slots.flatMap(slot => {
      const address = slot.plug ? { cylinder: slot.cylinder, plug: slot.plug } : { cylinder: slot.cylinder }
      const words = readingWords(slot)
      const rank = ranks[states.get(tray.stage)?.get(slot.cylinder) ?? 'unknown']
      return slot.shots.map(shot => ({
        ...of(shot, tray, rank),
        cylinder: slot.cylinder,
        photo: photoOf(
          shot,
          `${slotKey(address)}, ${shot.kind}, ${name}: ${words}`,
          `Photo of ${slotLabel(address)}, ${shot.kind}, ${name}`,
        ),
      }))
    })
    const unsorted = tray.unsorted.map(shot => ({
      ...of(shot, tray, ranks.unknown),
      photo: photoOf(shot, `Not laid out, ${shot.kind}, ${name}`, `Photo, ${shot.kind}, ${name}`),
    }))
    return [...laidOut, ...unsorted]
  })
}

const of = (shot: Shot, tray: Tray, rank: number) => ({
  shotId: shot.id,
  kind: shot.kind,
  stage: tray.stage,
  rank,
})

function readingWords(slot: Slot): string {
  const reading = currentReading(slot)
  if (!reading) return 'not read'
  const condition = reading.condition ?? 'no condition tagged'
  return reading.details.oilInWell ? `${condition}, oil in the well` : condition
}

const photoOf = (shot: Shot, caption: string, alt: string): WriteUpPhoto => ({
  shotId: shot.id,
  photo: shot.photo,
  caption,
  alt,
})
