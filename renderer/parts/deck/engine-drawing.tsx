// The engine as a drawing: head outlines, head bolts, centre lines and the front of the engine. No meaning of its own.
import type { DeckGeometry } from '../../../shared/engine/deck-geometry.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { type DeckPlaces, frontDepth } from './deck-places.ts'

type EngineDrawingProps = { layout: Layout; places: DeckPlaces }

export function EngineDrawing({ layout, places: { deck, scale, x, y } }: EngineDrawingProps) {
  const upright = layout.front === 'top' || layout.front === 'bottom'
  return (
    <svg className="engine" aria-hidden="true">
      <g transform={`translate(${x} ${y}) scale(${scale})`}>
        <FrontCover deck={deck} layout={layout} />
        {deck.banks.map(bank => (
          <g key={bank.name}>
            <rect className="engine-head" {...boxOf(bank)} rx={12} />
            <path className="engine-centre" d={centreMarks(bank, upright)} />
            {boltsOf(bank, upright, cylindersIn(bank, deck)).map(bolt => (
              <circle key={`${bolt.x} ${bolt.y}`} className="engine-bolt" cx={bolt.x} cy={bolt.y} r={4.5} />
            ))}
          </g>
        ))}
        {deck.cylinders.map(one => (
          <rect
            key={one.cylinder}
            className="engine-cylinder"
            {...boxOf(one)}
            rx={Math.min(one.width, one.height) / 2}
          />
        ))}
      </g>
    </svg>
  )
}

type Box = { x: number; y: number; width: number; height: number }
const boxOf = ({ x, y, width, height }: Box): Box => ({ x, y, width, height })

/** Where the middle line of a bank leaves it at both ends. */
const centreMarks = ({ x, y, width, height }: Box, upright: boolean): string =>
  upright
    ? `M ${x + width / 2} ${y - 6} v 14 m 0 ${height - 16} v 14`
    : `M ${x - 6} ${y + height / 2} h 14 m ${width - 16} 0 h 14`

const cylindersIn = (bank: Box, deck: DeckGeometry): number =>
  deck.cylinders.filter(
    one => one.x >= bank.x && one.x < bank.x + bank.width && one.y >= bank.y && one.y < bank.y + bank.height,
  ).length

/** Bolts stand at the corners of every cylinder, shared by neighbours. */
function boltsOf(bank: Box, upright: boolean, cylinders: number): { x: number; y: number }[] {
  const long = upright ? bank.height : bank.width
  return Array.from({ length: cylinders + 1 }, (_, at) => {
    const along = 11 + (at * (long - 22)) / cylinders
    return upright
      ? [
          { x: bank.x + 11, y: bank.y + along },
          { x: bank.x + bank.width - 11, y: bank.y + along },
        ]
      : [
          { x: bank.x + along, y: bank.y + 11 },
          { x: bank.x + along, y: bank.y + bank.height - 11 },
        ]
  }).flat()
}

/** A plate across the banks where the belts run, with an arrow out of the engine. */
function FrontCover({ deck, layout }: { deck: DeckGeometry; layout: Layout }) {
  const left = Math.min(...deck.banks.map(bank => bank.x))
  const right = Math.max(...deck.banks.map(bank => bank.x + bank.width))
  const top = Math.min(...deck.banks.map(bank => bank.y))
  const bottom = Math.max(...deck.banks.map(bank => bank.y + bank.height))
  const { plate: deep, gap } = frontDepth
  const plate = {
    top: { x: left, y: top - deep - gap, width: right - left, height: deep },
    bottom: { x: left, y: bottom + gap, width: right - left, height: deep },
    left: { x: left - deep - gap, y: top, width: deep, height: bottom - top },
    right: { x: right + gap, y: top, width: deep, height: bottom - top },
  }[layout.front]
  const turn = { top: 0, right: 90, bottom: 0, left: -90 }[layout.front]
  const arrow = { top: '\u25B2', right: '\u25B2', bottom: '\u25BC', left: '\u25B2' }[layout.front]
  return (
    <g>
      <rect className="engine-front" {...plate} rx={4} />
      <text
        className="engine-front-word"
        transform={`translate(${plate.x + plate.width / 2} ${plate.y + plate.height / 2}) rotate(${turn})`}
      >
        {`${arrow} front`}
      </text>
    </g>
  )
}
