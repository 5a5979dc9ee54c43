// What the pointer of a vacuum gauge does and what usually causes it, as published in manuals and workshop charts. Several
// causes share a pattern, so none of these names a part alone. Numbers in inHg, at idle and sea level.
import type { NeedleBehaviour } from './vacuum-entry.ts'

type Span = readonly [from: number, to: number]

export type NeedleRow = {
  needle: NeedleBehaviour
  causes: string
  source: string
  /** The row speaks of a swing of this size, */
  swing?: Span
  /** of a reading in this span, */
  reading?: Span
  /** or of one this far under the expected band. */
  below?: Span
}

const ordnance = 'US Army Ordnance subcourse OD1001, lesson 3'
const outfit = 'US Army TM 9-4910-677-14&P'
const forkLift = 'US Army TM 10-3930-618-20'
const pump = 'hand vacuum pump manual (MV8500)'
const charts = 'older workshop vacuum charts'
const makers = 'Subaru intake manifold vacuum page; Lincoln general vacuum test page'
const metric = 'a metric workshop manual'

export const needleTable: readonly NeedleRow[] = [
  {
    needle: 'steady',
    below: [0.25, 16],
    causes:
      'something that hits all cylinders alike: late ignition, late valve timing, loose tappets, rings that leak alike, an intake leak',
    source: `${ordnance}; ${outfit}`,
  },
  {
    needle: 'steady',
    below: [0.25, 2],
    causes: 'late ignition or valve timing, loose tappets',
    source: outfit,
  },
  { needle: 'steady', below: [3, 9], causes: 'an air leak in the induction', source: pump },
  {
    needle: 'steady',
    reading: [0, 5],
    causes: 'a gasket of the manifold or the throttle body',
    source: charts,
  },
  { needle: 'steady', reading: [8, 14], causes: 'valve timing', source: charts },
  { needle: 'steady', reading: [13, 16], causes: 'ignition late', source: charts },
  {
    needle: 'small flicker',
    swing: [0, 1.5],
    causes: 'a slight ignition fault or small plug gaps',
    source: `${metric}; ${makers}`,
  },
  {
    needle: 'regular drop',
    causes:
      'one or more cylinders, not all: ignition miss, a leaking valve or a head gasket (compression separates them)',
    source: `${ordnance}; ${forkLift}`,
  },
  {
    needle: 'regular drop',
    swing: [1, 8],
    causes: 'a burned valve, if it drops several divisions each time one cylinder acts',
    source: charts,
  },
  {
    needle: 'sharp deep drop',
    causes: 'the head gasket between two cylinders, if it drops about 10 inHg and back each time',
    source: pump,
  },
  {
    needle: 'irregular drop',
    causes: 'a sticking valve or an ignition miss',
    source: `${ordnance}; ${forkLift}`,
  },
  { needle: 'irregular drop', swing: [3, 5], causes: 'a sticking valve before all', source: charts },
  {
    needle: 'irregular drop',
    swing: [4, 5],
    causes: 'a lean mixture',
    source: pump,
  },
  {
    needle: 'irregular drop',
    causes: 'mixture rich or lean, or bad plugs',
    source: forkLift,
  },
  {
    needle: 'fast vibration',
    reading: [14, 19],
    causes: 'worn intake valve guides if it steadies with speed',
    source: `${charts}; ${makers}`,
  },
  {
    needle: 'fast vibration',
    causes: 'weak valve springs if it grows with speed',
    source: `${outfit}; ${charts}`,
  },
  { needle: 'slow float', causes: 'mixture', source: `${ordnance}; ${charts}` },
  { needle: 'slow float', swing: [4, 5], causes: 'a rich mixture', source: pump },
  {
    needle: 'slow float',
    reading: [14, 16],
    causes: 'plug gaps too small, or the breaker points where there are any',
    source: charts,
  },
  {
    needle: 'falls away',
    causes: 'an exhaust restriction where it was normal at start (the faster the fall, the worse)',
    source: `${ordnance}; ${forkLift}`,
  },
  {
    needle: 'sweeps grow with speed',
    causes: 'weak or broken valve springs',
    source: `${outfit}; ${makers}; ${charts}`,
  },
  { needle: 'sweeps shrink with speed', causes: 'an intake leak', source: outfit },
  {
    needle: 'steadies with speed',
    causes: 'ignition, distributor weights where there are any, or mixture',
    source: outfit,
  },
  { needle: 'slow return', causes: 'exhaust back pressure', source: makers },
]

/** What was measured of one behaviour; what was not leaves every row standing. */
export type NeedleNumbers = { swing?: number; reading?: number; below?: number }

const fits = (value: number | undefined, span: Span | undefined): boolean =>
  span === undefined || value === undefined || (value >= span[0] && value <= span[1])

/** The rows that speak of this behaviour and that no measured number contradicts, in the order of the table. */
export const needleRows = (needle: NeedleBehaviour, measured: NeedleNumbers): NeedleRow[] =>
  needleTable.filter(
    row =>
      row.needle === needle &&
      fits(measured.swing, row.swing) &&
      fits(measured.reading, row.reading) &&
      fits(measured.below, row.below),
  )

/** Causes of the rows in one line, and their sources, each once. */
export function rowWords(rows: readonly NeedleRow[]): { causes: string; source: string } {
  const named = new Set(rows.flatMap(row => row.source.split('; ')))
  return { causes: rows.map(row => row.causes).join('; '), source: [...named].join('; ') }
}
