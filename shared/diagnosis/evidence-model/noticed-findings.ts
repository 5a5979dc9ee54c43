// What somebody noticed that speaks of the whole engine. What speaks of some cylinder, not known which, is left out here.
import type { ObservationKind } from '../../gauges/observation-entry.ts'
import { type Finding, mostOdds } from './finding.ts'
import type { EngineCause } from './causes.ts'
import { texts } from './sources.ts'

type Row = { sound: number; effects: Partial<Record<EngineCause, number>>; source?: string }

/** How often it is noticed without and with the cause. */
const rows: Partial<Record<ObservationKind, Row>> = {
  'starter turns slowly': { sound: 0.06, effects: { 'weak battery': 0.85 } },
  'black smoke': {
    sound: 0.04,
    effects: { 'high fuel pressure': 0.45, 'metered too much fuel': 0.35, 'EGR or purge stuck open': 0.15 },
  },
  'blue smoke': {
    sound: 0.08,
    effects: { 'oil carry-over': 0.45, 'worn evenly': 0.5 },
    source: texts.overall,
  },
  'oil level falls': { sound: 0.12, effects: { 'oil carry-over': 0.5, 'worn evenly': 0.6 } },
  'oil in intake or breather': { sound: 0.06, effects: { 'oil carry-over': 0.8, 'worn evenly': 0.4 } },
  'knock heard': {
    sound: 0.05,
    effects: { detonation: 0.7, 'ignition timing': 0.35, 'wrong plugs': 0.15 },
  },
  'hiss at the intake': { sound: 0.05, effects: { 'plenum air leak': 0.6 } },
  'fuel smell': { sound: 0.06, effects: { 'high fuel pressure': 0.35, 'EGR or purge stuck open': 0.25 } },
  'long idling or short trips': {
    sound: 0.25,
    effects: { 'thermostat or short trips': 0.85 },
    source: texts.plugs,
  },
  'plugs other than specified': { sound: 0.04, effects: { 'wrong plugs': 0.85 } },
  'engine overheated lately': { sound: 0.04, effects: { detonation: 0.2 } },
  'fault at idle': {
    sound: 0.4,
    effects: { 'plenum air leak': 0.8, 'EGR or purge stuck open': 0.75, 'worn evenly': 0.6 },
  },
  'fault under load': {
    sound: 0.35,
    effects: { 'low fuel delivery': 0.8, 'exhaust restriction': 0.85, 'ignition timing': 0.6 },
  },
  'fault at speed': { sound: 0.25, effects: { 'exhaust restriction': 0.8, 'low fuel delivery': 0.65 } },
}

export const noticedFindings: readonly Finding[] = Object.entries(rows).map(([id, row]) => {
  const source = row.source ?? 'common practice'
  return {
    id: `noticed: ${id}`,
    of: 'engine',
    kind: 'ordered',
    outcomes: ['no', 'yes'],
    sound: { chances: [1 - row.sound, row.sound], source: 'judgement' },
    effects: Object.fromEntries(
      Object.entries(row.effects).map(([cause, chance]) => [
        cause,
        { chances: [1 - chance, chance], source },
      ]),
    ),
    most: mostOdds.told,
  }
})
