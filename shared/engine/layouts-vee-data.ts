// Engines with two rows in a vee, in both common ways of numbering: odd and even banks, and bank by bank. Facts only,
// each order with where it was read.
import type { EngineRow } from './engine-row.ts'

const places = (each: number): number[] => Array.from({ length: each }, (_, i) => i)

const oddEven = (each: number): EngineRow['banks'] => [
  ['odd bank', places(each).map(i => 2 * i + 1)],
  ['even bank', places(each).map(i => 2 * i + 2)],
]

const bankByBank = (each: number): EngineRow['banks'] => [
  ['bank 1', places(each).map(i => i + 1)],
  ['bank 2', places(each).map(i => each + i + 1)],
]

export const veeRows: readonly EngineRow[] = [
  {
    id: 'v2-90',
    name: 'Vee two, 90° vee',
    arrangement: 'vee',
    banks: [
      ['front', [1]],
      ['rear', [2]],
    ],
    intervalsDeg: [270, 450],
    note: 'One shared crankpin. Fires unevenly: no companion cylinder.',
    orders: [{ order: [1, 2], source: 'common practice' }],
  },
  {
    id: 'v4-60-split',
    name: 'Vee four, bank by bank',
    arrangement: 'vee',
    banks: bankByBank(2),
    note: '60° vee with split crankpins.',
    orders: [{ order: [1, 3, 4, 2], source: 'seen in a public list' }],
  },
  {
    id: 'v6-oddeven',
    name: 'Vee six, odd and even banks',
    arrangement: 'vee',
    banks: oddEven(3),
    note: 'Even firing, by split crankpins or six throws.',
    orders: [
      { order: [1, 2, 3, 4, 5, 6], source: 'seen in a public list, for a 60° vee' },
      { order: [1, 6, 5, 4, 3, 2], source: 'seen in a public list, for a 90° vee with split crankpins' },
    ],
  },
  {
    id: 'v6-sequential',
    name: 'Vee six, bank by bank',
    arrangement: 'vee',
    banks: bankByBank(3),
    orders: [
      { order: [1, 4, 2, 5, 3, 6], source: 'seen in a public list' },
      { order: [1, 4, 3, 6, 2, 5], source: 'seen in a public list, for a 90° vee' },
    ],
  },
  {
    id: 'v6-sequential-rear-numbered',
    name: 'Vee six, bank by bank, second bank numbered from the rear',
    arrangement: 'vee',
    banks: [
      ['bank 1', [1, 2, 3]],
      ['bank 2', [6, 5, 4]],
    ],
    note: 'That the second bank counts from the rear is inferred from what the crankshaft allows: check the engine.',
    orders: [{ order: [1, 6, 2, 5, 3, 4], source: 'seen in a public list; direction of bank 2 inferred' }],
  },
  {
    id: 'v6-90-oddfire',
    name: 'Vee six, odd and even banks, odd fire',
    arrangement: 'vee',
    banks: oddEven(3),
    intervalsDeg: [150, 90, 150, 90, 150, 90],
    note: '90° vee with three shared crankpins. Fires unevenly: no companion cylinder.',
    orders: [{ order: [1, 6, 5, 4, 3, 2], source: 'common practice' }],
  },
  {
    id: 'v8-cross-oddeven',
    name: 'Vee eight, odd and even banks, cross-plane crank',
    arrangement: 'vee',
    banks: oddEven(4),
    orders: [
      { order: [1, 8, 4, 3, 6, 5, 7, 2], source: 'seen in several public texts' },
      { order: [1, 8, 7, 2, 6, 5, 4, 3], source: 'common practice' },
      { order: [1, 8, 7, 3, 6, 5, 4, 2], source: 'common practice' },
      { order: [1, 2, 7, 3, 4, 5, 6, 8], source: 'common practice' },
    ],
  },
  {
    id: 'v8-cross-sequential',
    name: 'Vee eight, bank by bank, cross-plane crank',
    arrangement: 'vee',
    banks: bankByBank(4),
    orders: [
      { order: [1, 3, 7, 2, 6, 5, 4, 8], source: 'common practice' },
      { order: [1, 5, 4, 2, 6, 3, 7, 8], source: 'common practice' },
      { order: [1, 5, 4, 8, 6, 3, 7, 2], source: 'common practice' },
      { order: [1, 5, 4, 8, 7, 2, 6, 3], source: 'from memory, unchecked' },
    ],
  },
  {
    id: 'v8-flat-sequential',
    name: 'Vee eight, bank by bank, flat-plane crank',
    arrangement: 'vee',
    banks: bankByBank(4),
    orders: [
      { order: [1, 5, 3, 7, 4, 8, 2, 6], source: 'common practice' },
      { order: [1, 5, 4, 8, 3, 7, 2, 6], source: 'from memory, unchecked' },
    ],
  },
  {
    id: 'v8-flat-oddeven',
    name: 'Vee eight, odd and even banks, flat-plane crank',
    arrangement: 'vee',
    banks: oddEven(4),
    orders: [{ order: [1, 4, 3, 8, 7, 6, 5, 2], source: 'from memory, unchecked' }],
  },
  {
    id: 'v10-oddeven',
    name: 'Vee ten, odd and even banks',
    arrangement: 'vee',
    banks: oddEven(5),
    note: 'Taken as firing evenly, every 72°.',
    orders: [{ order: [1, 10, 9, 4, 3, 6, 5, 8, 7, 2], source: 'common practice' }],
  },
  {
    id: 'v10-oddeven-90-shared',
    name: 'Vee ten, odd and even banks, odd fire',
    arrangement: 'vee',
    banks: oddEven(5),
    intervalsDeg: [54, 90, 54, 90, 54, 90, 54, 90, 54, 90],
    note: '90° vee with five shared crankpins. Fires unevenly: no companion cylinder.',
    orders: [{ order: [1, 10, 9, 4, 3, 6, 5, 8, 7, 2], source: 'common practice' }],
  },
  {
    id: 'v10-sequential',
    name: 'Vee ten, bank by bank',
    arrangement: 'vee',
    banks: bankByBank(5),
    note: 'Taken as firing evenly, every 72°.',
    orders: [{ order: [1, 6, 5, 10, 2, 7, 3, 8, 4, 9], source: 'common practice' }],
  },
  {
    id: 'v12-sequential',
    name: 'Vee twelve, bank by bank',
    arrangement: 'vee',
    banks: bankByBank(6),
    orders: [
      { order: [1, 7, 5, 11, 3, 9, 6, 12, 2, 8, 4, 10], source: 'seen in a public list' },
      { order: [1, 12, 5, 8, 3, 10, 6, 7, 2, 11, 4, 9], source: 'common practice' },
    ],
  },
]
