// The key of each plug condition while the plugs area has focus, as data: shown beside the control, tested for clashes.
import { type Condition, conditions } from '../../../../shared/plug/condition.ts'

export const conditionKeys: Record<Condition, string> = {
  lean: 'l',
  normal: 'n',
  rich: 'r',
  'oil-wetted': 'o',
  carbon: 'c',
  ash: 'a',
  overheated: 'h',
  coolant: 'w',
  'fuel-wet': 'f',
  worn: 'e',
  damaged: 'd',
}

export const conditionForKey = (key: string): Condition | undefined =>
  conditions.find(condition => conditionKeys[condition] === key.toLowerCase())

/** Toggles the flag "oil in the well", which is its own finding. */
export const oilInWellKey = 't'
