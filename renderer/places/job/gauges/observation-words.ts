// What can be seen, heard or told, in the order it is asked.
import type { ObservationKind } from '../../../../shared/gauges/observation-entry.ts'

export const observationGroups: readonly { title: string; kinds: readonly ObservationKind[] }[] = [
  {
    title: 'When the fault comes',
    kinds: [
      'fault only cold',
      'fault only hot',
      'fault at idle',
      'fault under load',
      'fault at speed',
      'fault in the wet',
      'comes and goes',
      'does not start',
      'starter turns slowly',
    ],
  },
  {
    title: 'Smoke and fluids',
    kinds: [
      'blue smoke',
      'white smoke or steam',
      'black smoke',
      'coolant level falls',
      'combustion gas in coolant',
      'cooling system loses pressure',
      'oil level falls',
      'oil milky',
      'oil in intake or breather',
    ],
  },
  {
    title: 'Sound and smell',
    kinds: ['knock heard', 'ticking at the valves', 'hiss at the intake', 'exhaust blows', 'fuel smell'],
  },
  {
    title: 'Plugs, fuel and history',
    kinds: [
      'plugs new',
      'plugs other than specified',
      'plug found loose',
      'long idling or short trips',
      'fuel with metallic additive',
      'runs on gas fuel',
      'engine overheated lately',
      'repair just before the fault',
    ],
  },
]
