// Random commands for property tests. What a command names depends on the job as it then stands, so each random
// value is a recipe that is made into a command when its turn comes. Some come out as ones that must be refused.
import * as fc from 'fast-check'
import { slotsOf } from '../../engine/slots.ts'
import { shotKinds } from '../../plug/condition.ts'
import type { Command, CommandName, ReadingChange, SlotAddress } from '../command-schema.ts'
import { shotsOf, shotsOfTray } from '../current.ts'
import type { Job } from '../job-schema.ts'
import type { Tray } from '../tray-schema.ts'
import { unknownKind } from '../unknown-kind.ts'
import { arbitraryLayout } from './arbitrary-layout.ts'
import {
  arbitraryCircumstances,
  arbitraryDetails,
  arbitraryEngine,
  arbitraryName,
  arbitraryPull,
  arbitraryReading,
  arbitraryRepair,
  arbitraryShot,
  arbitraryText,
} from './arbitrary-parts.ts'

const commandNames: readonly CommandName[] = [
  'set complaint',
  'set engine',
  'set circumstances',
  'set technician',
  'set notes',
  'change layout',
  'set archived',
  'add tray',
  'rename tray',
  'remove tray',
  'add shots',
  'move shots',
  'fill slots',
  'swap slots',
  'remove shots',
  'set shot kind',
  'set reading',
  'clear reading',
  'add pull',
  'add pulls',
  'void pull',
  'unvoid pull',
  'correct pulls',
  'set up test',
  'set instruments',
  'set repair',
  'set write-up',
]

const arbitraryChange: fc.Arbitrary<ReadingChange> = fc.record(
  {
    condition: fc.option(arbitraryReading.map(reading => reading.condition ?? 'normal')),
    details: fc.oneof(
      arbitraryDetails,
      fc.constant({ gap: null, deposits: null, wetness: null }),
      fc.constant({ insulatorColour: null, electrodeWear: null, insulatorDamage: null, oilInWell: null }),
    ),
    note: fc.option(arbitraryText),
  },
  { requiredKeys: [] },
)

const arbitraryRecipe = fc.record({
  name: fc.constantFrom(...commandNames),
  picks: fc.array(fc.nat({ max: 10_000 }), { minLength: 6, maxLength: 6 }),
  flag: fc.boolean(),
  text: arbitraryText,
  word: arbitraryName,
  engine: arbitraryEngine,
  circumstances: arbitraryCircumstances,
  layout: arbitraryLayout,
  shots: fc.array(arbitraryShot, { minLength: 1, maxLength: 3 }),
  change: arbitraryChange,
  pull: arbitraryPull([1, 2, 3, 4, 5, 6]),
  repair: arbitraryRepair,
})
type Recipe = typeof arbitraryRecipe extends fc.Arbitrary<infer R> ? R : never

const pickFrom = <T>(list: readonly T[], pick: number, otherwise: T): T =>
  list.length === 0 ? otherwise : (list[pick % list.length] ?? otherwise)

const idsOf = (tray: Tray): string[] => shotsOfTray(tray).map(shot => shot.id)

/** `turn` makes the ids of what is added unique within a run. */
const commandFrom = (recipe: Recipe, job: Job, turn: number): Command => {
  const { name, picks, flag, text, word } = recipe
  const [p = 0, q = 0, r = 0, s = 0, t = 0, u = 0] = picks
  const [firstTray] = job.trays
  const tray = firstTray && pickFrom(job.trays, p, firstTray)
  const trayId = u % 20 === 0 ? 'no-such-tray' : (tray?.id ?? 'no-such-tray')
  const slots = slotsOf(job.layout)
  const slot = (pick: number): SlotAddress => pickFrom(slots, pick, { cylinder: 1 })
  const ids = tray === undefined ? [] : idsOf(tray)
  const shot = (pick: number): string => pickFrom(ids, pick, 'no-such-shot')
  const pullId = pickFrom(
    job.pulls.map(pull => pull.id),
    q,
    'no-such-pull',
  )
  const stage = flag ? 'as found' : 'after repair'
  switch (name) {
    case 'set complaint':
      return { command: name, complaint: text }
    case 'set engine':
      return { command: name, engine: recipe.engine }
    case 'set circumstances':
      return { command: name, circumstances: recipe.circumstances }
    case 'set technician':
      return { command: name, technician: flag ? word : null }
    case 'set notes':
      return { command: name, notes: text }
    case 'change layout':
      return { command: name, layout: recipe.layout }
    case 'set archived':
      return { command: name, archived: flag }
    case 'add tray':
      return { command: name, trayId: `new-tray-${turn}`, name: word, stage }
    case 'rename tray':
      return { command: name, trayId, name: word, stage }
    case 'remove tray':
      return { command: name, trayId }
    case 'add shots': {
      const shots = recipe.shots.map((made, i) => ({ ...made, id: `new-shot-${turn}-${i}` }))
      return flag ? { command: name, trayId, shots, to: slot(q) } : { command: name, trayId, shots }
    }
    case 'move shots':
      return { command: name, trayId, shots: [shot(q), shot(r)], to: flag ? slot(s) : null }
    case 'fill slots': {
      const named = [...new Set([shot(q), shot(r), shot(s)])]
      return { command: name, trayId, assignments: named.map((id, i) => ({ shot: id, to: slot(t + i) })) }
    }
    case 'swap slots':
      return { command: name, trayId, a: slot(q), b: slot(r) }
    case 'remove shots':
      return { command: name, trayId, shots: [shot(q)] }
    case 'set shot kind':
      return { command: name, trayId, shots: [shot(q), shot(r)], kind: pickFrom(shotKinds, s, 'other') }
    case 'set reading':
      return { command: name, trayId, slots: [slot(q), slot(r)], change: recipe.change }
    case 'clear reading':
      return { command: name, trayId, slots: [slot(q)] }
    case 'add pull':
      return { command: name, pull: { ...recipe.pull, id: flag ? `new-pull-${turn}` : pullId } }
    case 'add pulls':
      return {
        command: name,
        pulls: [
          { ...recipe.pull, id: `table-${turn}-1` },
          { ...recipe.pull, id: flag ? `table-${turn}-2` : pullId },
        ],
      }
    case 'void pull':
      return { command: name, pullId, reason: word }
    case 'unvoid pull':
      return { command: name, pullId }
    case 'correct pulls':
      return {
        command: name,
        pullIds: [pullId],
        how: flag ? { kind: 'scale', factor: 0.5 } : { kind: 'as entered' },
        reason: word,
      }
    case 'set up test':
      return {
        command: name,
        test: 'compression',
        stage,
        conditions: flag ? { throttle: 'open', engine: 'warm' } : {},
      }
    case 'set instruments':
      return {
        command: name,
        instruments: flag ? [{ id: `tester-${turn}`, kind: 'compression gauge', name: word }] : [],
      }
    case 'set repair': {
      const { done, cause } = recipe.repair
      return { command: name, repair: flag ? { done, ...(cause !== undefined && { cause }) } : null }
    }
    case 'set write-up': {
      const all = shotsOf(job).map(({ id }) => id)
      const chosen = [...new Set([pickFrom(all, q, ''), pickFrom(all, r, '')])].filter(id => id !== '')
      return { command: name, writeUp: { shots: chosen, noteForShop: text } }
    }
    default:
      return unknownKind(name)
  }
}

/** Makes the command of this turn from the job as it stands then. */
export type CommandMaker = (job: Job, turn: number) => Command

export const arbitraryCommand: fc.Arbitrary<CommandMaker> = arbitraryRecipe.map(
  recipe => (job: Job, turn: number) => commandFrom(recipe, job, turn),
)
