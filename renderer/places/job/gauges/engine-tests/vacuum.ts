// Vacuum in its five states, with the needle and the trend chosen by what they look like.
import type { NeedleBehaviour, VacuumEntry, VacuumPhase } from '../../../../../shared/gauges/vacuum-entry.ts'
import type { Vacuum } from '../../../../../shared/units/quantity.ts'
import { toVacuum } from '../../../../../shared/units/convert.ts'
import { parseVacuum } from '../../../../../shared/units/parse.ts'
import { chosen, type Field, given } from '../entry/field.ts'
import { readRpm } from '../entry/read-number.ts'
import type { DefineEngineTest } from './engine-test.ts'

const phases: readonly VacuumPhase[] = ['idle', '2500 rpm', 'snap', 'trailing throttle', 'cranking']
const needleLooks: Readonly<Record<NeedleBehaviour, string>> = {
  steady: 'stands still',
  'small flicker': 'trembles by a hair',
  'regular drop': 'drops in an even beat',
  'sharp deep drop': 'drops deep and quickly, in a beat',
  'irregular drop': 'drops now and then, no beat',
  'fast vibration': 'shakes fast over a band',
  'slow float': 'drifts up and down slowly',
  'falls away': 'sinks and stays down',
  'sweeps grow with speed': 'swings wider as speed rises',
  'sweeps shrink with speed': 'swings less as speed rises',
  'steadies with speed': 'shakes at idle, still above it',
  'slow return': 'comes back slowly after a change',
}
// The record above names every behaviour, or it would not compile.
const needles = [
  'steady',
  'small flicker',
  'regular drop',
  'sharp deep drop',
  'irregular drop',
  'fast vibration',
  'slow float',
  'falls away',
  'sweeps grow with speed',
  'sweeps shrink with speed',
  'steadies with speed',
  'slow return',
] as const satisfies readonly NeedleBehaviour[]
const trends: readonly NonNullable<VacuumEntry['trend']>[] = [
  'holds',
  'rises',
  'falls slowly',
  'falls toward zero',
]

/** Whichever way round the two ends were typed. */
const inOrder = (a: Vacuum, b: Vacuum): { low: Vacuum; high: Vacuum } =>
  toVacuum(a, 'inHg') <= toVacuum(b, 'inHg') ? { low: a, high: b } : { low: b, high: a }

export const vacuumTest: DefineEngineTest = ({ vacuum: unit }) => {
  const vacuum = (text: string): Vacuum | null => parseVacuum(text, unit)
  const number = (name: string, title: string): Field => ({
    name,
    title,
    unit,
    kind: 'number',
    parse: vacuum,
  })
  return {
    test: 'vacuum',
    keepWords: 'Keep the reading',
    needs: 'Type the reading of the gauge first.',
    initial: { phase: 'idle' },
    stays: ['phase'],
    fields: ({ phase }) => [
      { name: 'phase', title: 'State', kind: 'choice', options: phases, needed: true },
      number('reading', phase === 'snap' ? 'Lowest point of the snap' : `Vacuum at ${phase ?? 'idle'}`),
      ...(phase === 'snap'
        ? [number('rebound', 'Rebound'), number('settled', 'Settles at')]
        : [number('low', 'Swings down to'), number('high', 'Swings up to')]),
      { name: 'rpm', title: 'Speed', unit: 'rpm', kind: 'number', parse: readRpm },
      ...(phase === '2500 rpm'
        ? [{ name: 'trend', title: 'While held', kind: 'choice', options: trends } as const]
        : []),
      { name: 'needle', title: 'The needle', kind: 'choice', options: needles, describe: needleLooks },
    ],
    pull: (typed, base) => {
      const phase = chosen(typed.phase, phases)
      const reading = given(typed.reading, vacuum)
      if (!phase || !reading) return null
      const low = given(typed.low, vacuum)
      const high = given(typed.high, vacuum)
      if ((low === undefined) !== (high === undefined)) return 'Type both ends of the swing, or none.'
      const rebound = given(typed.rebound, vacuum)
      const settled = given(typed.settled, vacuum)
      const rpm = given(typed.rpm, readRpm)
      const needle = chosen(typed.needle, needles)
      const trend = chosen(typed.trend, trends)
      return {
        ...base,
        test: 'vacuum',
        entry: {
          phase,
          reading,
          ...(low && high && phase !== 'snap' && { range: inOrder(low, high) }),
          ...(phase === 'snap' && rebound && { rebound }),
          ...(phase === 'snap' && settled && { settled }),
          ...(needle && { needle }),
          ...(phase === '2500 rpm' && trend && { trend }),
          ...(rpm !== undefined && { rpm }),
        },
      }
    },
  }
}
