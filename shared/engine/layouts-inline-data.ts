// Engines with all cylinders in one row, numbered from the front. Facts only, each order with where it was read.
import type { EngineRow } from './engine-row.ts'

const row = (count: number): EngineRow['banks'] => [['row', Array.from({ length: count }, (_, i) => i + 1)]]

export const inlineRows: readonly EngineRow[] = [
  {
    id: 'single',
    name: 'Single cylinder',
    arrangement: 'inline',
    banks: row(1),
    orders: [{ order: [1], source: 'common practice' }],
  },
  {
    id: 'i2-360',
    name: 'Inline two, 360° crank',
    arrangement: 'inline',
    banks: row(2),
    note: 'Both pistons rise together.',
    orders: [{ order: [1, 2], source: 'common practice' }],
  },
  {
    id: 'i2-180',
    name: 'Inline two, 180° crank',
    arrangement: 'inline',
    banks: row(2),
    intervalsDeg: [180, 540],
    note: 'Fires unevenly: no companion cylinder.',
    orders: [{ order: [1, 2], source: 'common practice' }],
  },
  {
    id: 'i2-270',
    name: 'Inline two, 270° crank',
    arrangement: 'inline',
    banks: row(2),
    intervalsDeg: [270, 450],
    note: 'Fires unevenly: no companion cylinder.',
    orders: [{ order: [1, 2], source: 'common practice' }],
  },
  {
    id: 'i3',
    name: 'Inline three',
    arrangement: 'inline',
    banks: row(3),
    note: 'Odd number of cylinders: no companion cylinder.',
    orders: [
      { order: [1, 2, 3], source: 'seen in restatements of an encyclopedia article on firing orders' },
      {
        order: [1, 3, 2],
        source: 'seen in restatements of an encyclopedia article on firing orders and in an older list',
      },
    ],
  },
  {
    id: 'i4',
    name: 'Inline four',
    arrangement: 'inline',
    banks: row(4),
    note: 'Outer pistons rise together, inner pistons together.',
    orders: [
      { order: [1, 3, 4, 2], source: 'seen in several public texts; the usual order' },
      { order: [1, 2, 4, 3], source: 'seen in a public text, for some older engines' },
    ],
  },
  {
    id: 'i4-crossplane',
    name: 'Inline four, cross-plane crank',
    arrangement: 'inline',
    banks: row(4),
    intervalsDeg: [270, 180, 90, 180],
    note: 'Motorcycle engines. Fires unevenly.',
    orders: [{ order: [1, 3, 2, 4], source: 'common practice' }],
  },
  {
    id: 'i5',
    name: 'Inline five',
    arrangement: 'inline',
    banks: row(5),
    note: 'Odd number of cylinders: no companion cylinder.',
    orders: [{ order: [1, 2, 4, 5, 3], source: 'common practice' }],
  },
  {
    id: 'i6',
    name: 'Inline six',
    arrangement: 'inline',
    banks: row(6),
    orders: [
      { order: [1, 5, 3, 6, 2, 4], source: 'seen in the FAA powerplant handbook and several public texts' },
      { order: [1, 4, 2, 6, 3, 5], source: 'seen in a public list, for an inline diesel six' },
    ],
  },
  {
    id: 'i8',
    name: 'Inline eight',
    arrangement: 'inline',
    banks: row(8),
    note: 'Historic.',
    orders: [{ order: [1, 6, 2, 5, 8, 3, 7, 4], source: 'common practice' }],
  },
]
