// What a person's reading of one plug says, all of it: the condition first, then each detail that adds something.
import type { Reading } from '../job/tray-schema.ts'
import { conditionMeanings } from './condition-meanings.ts'
import type { Condition } from './condition.ts'
import { depositMeaning } from './deposit-meanings.ts'
import {
  askingColours,
  colourMeanings,
  damageMeanings,
  wearMeanings,
  wetnessMeanings,
} from './detail-meanings.ts'
import type { Meaning } from './meaning.ts'
import { oilInWellMeaning, oilTagOutsideMeaning } from './well-meanings.ts'

/** These say what the plug is wet with. */
const wetConditions: ReadonlySet<Condition> = new Set(['oil-wetted', 'fuel-wet', 'coolant'])
/** Soot beside these adds nothing. */
const sootyConditions: ReadonlySet<Condition> = new Set(['rich', 'carbon'])

/** Oil tagged, and every oil deposit noted lies outside the chamber. */
function oilOnlyOutside({ condition, details }: Pick<Reading, 'condition' | 'details'>): boolean {
  const oil = (details.deposits ?? []).filter(({ kind }) => kind === 'wet oil' || kind === 'baked oil')
  return (
    condition === 'oil-wetted' &&
    oil.length > 0 &&
    oil.every(({ place }) => place === 'outer body' || place === 'well')
  )
}

/** Each meaning once, in the order condition, well, deposits, colour, wetness, wear, damage. Empty for an empty reading. */
export function meaningsOf(reading: Pick<Reading, 'condition' | 'details'>): Meaning[] {
  const { condition, details } = reading
  const { insulatorColour, wetness, electrodeWear, insulatorDamage, oilInWell, deposits = [] } = details
  const inside = deposits.filter(
    ({ kind }) => !(kind === 'soot' && condition !== undefined && sootyConditions.has(condition)),
  )
  const wetNamed =
    (condition !== undefined && wetConditions.has(condition)) ||
    deposits.some(({ kind }) => kind === 'wet oil' || kind === 'coolant crust')
  const meanings: (Meaning | undefined)[] = [
    oilOnlyOutside(reading) ? oilTagOutsideMeaning : condition && conditionMeanings[condition],
    oilInWell ? oilInWellMeaning : undefined,
    ...inside.map(({ kind, place }) => depositMeaning(kind, place)),
    insulatorColour !== undefined && (condition === undefined || askingColours.has(insulatorColour))
      ? colourMeanings[insulatorColour]
      : undefined,
    wetness !== undefined && !wetNamed ? wetnessMeanings[wetness] : undefined,
    electrodeWear && wearMeanings[electrodeWear],
    insulatorDamage && damageMeanings[insulatorDamage],
  ]
  const found = meanings.filter(meaning => meaning !== undefined)
  return [...new Map(found.map(meaning => [meaning.text, meaning])).values()]
}
