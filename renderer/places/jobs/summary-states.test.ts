// What the job list says of an engine in a few words.
import { expect, it } from 'vitest'
import type { State } from '../../../shared/diagnosis/condition-map.ts'
import { statesInShort } from './summary-states.ts'

const states = (...list: State[]) => list.map((state, at) => ({ cylinder: at + 1, state }))

it.each([
  [
    'worst first',
    states('sound', 'fault', 'watch', 'fault'),
    { worst: 'fault', cylinders: [2, 4], unknown: 0 },
  ],
  ['what is unknown', states('sound', 'unknown', 'unknown'), { worst: 'sound', cylinders: [], unknown: 2 }],
  ['all alike', states('watch', 'watch'), { worst: 'watch', cylinders: [], unknown: 0 }],
  ['nothing known', states('unknown', 'unknown'), { worst: 'unknown', cylinders: [], unknown: 0 }],
  ['one of one', states('fault'), { worst: 'fault', cylinders: [1], unknown: 0 }],
  [
    'known ones alike, others not',
    states('watch', 'watch', 'unknown'),
    {
      worst: 'watch',
      cylinders: [1, 2],
      unknown: 1,
    },
  ],
  ['no cylinder at all', [], { worst: 'unknown', cylinders: [], unknown: 0 }],
])('says %s', (_, given, expected) => expect(statesInShort(given)).toEqual(expected))
