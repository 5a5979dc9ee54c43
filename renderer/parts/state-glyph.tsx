// The glyph of a state, alone or with its word. It never stands without its word beside it or spoken.
import type { State } from '../../shared/diagnosis/condition-map.ts'
import { stateShapes } from '../../shared/diagnosis/state-shape.ts'

/** Drawn around (0, 0) within the given radius, in the current colour. For use inside an SVG. */
export function StateMark({ state, radius }: { state: State; radius: number }) {
  const { outline, solid } = stateShapes[state]
  return (
    <g transform={`scale(${radius / 10})`} className="state-mark">
      {outline && (
        <path
          d={outline.path}
          fill="none"
          stroke="currentColor"
          strokeWidth={outline.width}
          strokeDasharray={outline.dash?.join(' ')}
        />
      )}
      {solid && <path d={solid} fill="currentColor" fillRule="evenodd" />}
    </g>
  )
}

export function StateGlyph({ state, size = 16 }: { state: State; size?: number }) {
  return (
    <svg className="state-glyph" viewBox="-10 -10 20 20" width={size} height={size} aria-hidden="true">
      <StateMark state={state} radius={10} />
    </svg>
  )
}

export function StateWord({ state }: { state: State }) {
  return (
    <span className="state-word" data-state={state}>
      <StateGlyph state={state} size={14} /> {state}
    </span>
  )
}
