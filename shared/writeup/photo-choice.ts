// Which photos the report shows: those a person chose, else the telling ones.
import { conditionMap } from '../diagnosis/condition-map.ts'
import { slotKey, slotLabel } from '../engine/slots.ts'
import type { SlotAddress } from '../job/command-schema.ts'
import { currentReading } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Shot, Slot, Tray } from '../job/tray-schema.ts'
import type { Audience, WriteUpPhoto } from './write-up.ts'

const mostPhotos = { shop: 24, customer: 6 } as const

type Candidate = { photo: WriteUpPhoto; tray: Tray; slot?: Slot; shot: Shot; rank: number }

/** Chosen shots in their order, from the unsorted strip too. Without a choice: faults, then what is watched, then mates. */
export function choosePhotos(job: Job, audience: Audience): WriteUpPhoto[] {
  const all = job.trays.flatMap(tray => [
    ...tray.slots.flatMap(slot => slot.shots.map(shot => candidate(job, tray, shot, slot))),
    ...tray.unsorted.map(shot => candidate(job, tray, shot)),
  ])
  const byId = new Map(all.map(one => [one.shot.id, one.photo]))
  const chosen = job.writeUp.shots.flatMap(id => byId.get(id) ?? [])
  if (chosen.length > 0) return chosen
  const laidOut = all.filter(one => one.slot !== undefined)
  if (audience === 'shop') return laidOut.slice(0, mostPhotos.shop).map(one => one.photo)
  return forCustomer(laidOut).map(one => one.photo)
}

/** The plugs that show something, one sound plug beside them, and the same places after the repair. */
function forCustomer(candidates: readonly Candidate[]): Candidate[] {
  const found = candidates.filter(one => one.tray.stage === 'as found')
  const telling = found.filter(one => one.rank < 2).toSorted((a, b) => a.rank - b.rank)
  const cylinders = new Set(telling.map(one => one.slot?.cylinder))
  const good = found.find(one => one.rank === 3 && one.shot.kind === 'end-on')
  const after = candidates.filter(
    one => one.tray.stage === 'after repair' && cylinders.has(one.slot?.cylinder),
  )
  const pictures = [...telling.slice(0, 3), ...(good ? [good] : []), ...after.slice(0, 2)]
  const rest = candidates.filter(one => !pictures.includes(one)).toSorted((a, b) => a.rank - b.rank)
  return [...pictures, ...(telling.length > 0 ? telling.filter(one => rest.includes(one)) : rest)].slice(
    0,
    mostPhotos.customer,
  )
}

const ranks = { fault: 0, watch: 1, unknown: 2, sound: 3 } as const

function candidate(job: Job, tray: Tray, shot: Shot, slot?: Slot): Candidate {
  const stage = tray.name.toLowerCase()
  if (!slot) {
    const caption = `Not laid out, ${shot.kind}, ${stage}`
    return { photo: photoOf(shot, caption, `Photo, ${shot.kind}, ${stage}`), tray, shot, rank: 2 }
  }
  const address: SlotAddress = slot.plug
    ? { cylinder: slot.cylinder, plug: slot.plug }
    : { cylinder: slot.cylinder }
  const reading = currentReading(slot)
  const words = [
    reading?.condition ?? (reading ? 'no condition tagged' : 'not read'),
    ...(reading?.details.oilInWell ? ['oil in the well'] : []),
  ].join(', ')
  const state = conditionMap(job, tray.stage).find(one => one.cylinder === slot.cylinder)?.state ?? 'unknown'
  return {
    photo: photoOf(
      shot,
      `${slotKey(address)}, ${shot.kind}, ${stage}: ${words}`,
      `Photo of ${slotLabel(address)}, ${shot.kind}, ${stage}`,
    ),
    tray,
    slot,
    shot,
    rank: ranks[state],
  }
}

const photoOf = (shot: Shot, caption: string, alt: string): WriteUpPhoto => ({
  shotId: shot.id,
  photo: shot.photo,
  caption,
  alt,
})
