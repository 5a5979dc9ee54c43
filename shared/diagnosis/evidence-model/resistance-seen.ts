// What the ohmmeter readings say: the last of each part and cylinder.
import { validPulls } from '../../job/current.ts'
import type { Job } from '../../job/job-schema.ts'
import type { Stage } from '../../job/tray-schema.ts'
import { type Seen, spans, sure } from './seen.ts'

/** Two texts call a lead bad over this; one maker asks this of a used plug's insulation. */
const limits = { leadOhms: 30_000, insulationOhms: 10e6 } as const

/** In natural logs of ohms: hand-held meters on dirty contacts differ by about a twentieth. */
const spread = 0.05

export function resistanceSeen(job: Job, stage: Stage): Seen[] {
  const last = new Map(
    validPulls(job, 'resistance', stage).map(pull => [`${pull.cylinder} ${pull.entry.part}`, pull]),
  )
  return [...last.values()].flatMap(({ cylinder, entry }): Seen[] => {
    const { part, ohms, open, specified } = entry
    const add = (finding: string, weights: readonly number[]): Seen[] => [
      { finding, cylinder, from: 'resistance', weights },
    ]
    const over = (limit: number): number[] => spans(Math.log(Math.max(ohms ?? 0, 1e-3) / limit), spread, [0])
    if (part === 'lead') {
      if (open === true) return add('lead resistance', sure(1, 2))
      return ohms === undefined ? [] : add('lead resistance', over(limits.leadOhms))
    }
    if (part === 'plug insulation')
      // No current at all is what good insulation shows.
      return open === true
        ? add('plug insulation', sure(0, 2))
        : ohms === undefined
          ? []
          : add('plug insulation', over(limits.insulationOhms).toReversed())
    if (part === 'plug') return []
    if (open === true) return add('coil windings', sure(1, 2))
    if (ohms === undefined || !specified) return []
    const [low = 0, within = 0, high = 0] = spans(
      ohms,
      Math.max(spread * ohms, 0.1),
      [specified.minimum, specified.maximum].toSorted((a, b) => a - b),
    )
    return add('coil windings', [within, low + high])
  })
}
