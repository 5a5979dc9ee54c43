// Engines with two rows lying opposite each other. Facts only, each order with where it was read.
import type { EngineRow } from './engine-row.ts'

export const flatRows: readonly EngineRow[] = [
  {
    id: 'flat2',
    name: 'Flat two',
    arrangement: 'flat',
    banks: [
      ['side 1', [1]],
      ['side 2', [2]],
    ],
    note: 'Both pistons reach top dead centre together.',
    orders: [{ order: [1, 2], source: 'common practice' }],
  },
  {
    id: 'flat4-oddeven',
    name: 'Flat four, odd and even banks',
    arrangement: 'flat',
    banks: [
      ['odd bank', [1, 3]],
      ['even bank', [2, 4]],
    ],
    orders: [
      { order: [1, 3, 2, 4], source: 'seen in the FAA powerplant handbook, for one opposed four' },
      { order: [1, 4, 2, 3], source: 'seen in the FAA powerplant handbook, for another opposed four' },
    ],
  },
  {
    id: 'flat4-sequential',
    name: 'Flat four, bank by bank',
    arrangement: 'flat',
    banks: [
      ['bank 1', [1, 2]],
      ['bank 2', [3, 4]],
    ],
    orders: [{ order: [1, 4, 3, 2], source: 'common practice' }],
  },
  {
    id: 'flat6-oddeven',
    name: 'Flat six, odd and even banks',
    arrangement: 'flat',
    banks: [
      ['odd bank', [1, 3, 5]],
      ['even bank', [2, 4, 6]],
    ],
    orders: [
      { order: [1, 6, 3, 2, 5, 4], source: 'seen in a public list' },
      { order: [1, 4, 5, 2, 3, 6], source: 'seen in the FAA powerplant handbook and a public list' },
    ],
  },
  {
    id: 'flat6-sequential',
    name: 'Flat six, bank by bank',
    arrangement: 'flat',
    banks: [
      ['bank 1', [1, 2, 3]],
      ['bank 2', [4, 5, 6]],
    ],
    orders: [{ order: [1, 6, 2, 4, 3, 5], source: 'seen in a public list' }],
  },
  {
    id: 'flat12',
    name: 'Flat twelve, bank by bank',
    arrangement: 'flat',
    banks: [
      ['bank 1', [1, 2, 3, 4, 5, 6]],
      ['bank 2', [7, 8, 9, 10, 11, 12]],
    ],
    orders: [{ order: [1, 12, 5, 8, 3, 10, 6, 7, 2, 11, 4, 9], source: 'from memory, unchecked' }],
  },
]
