// The glyph of a state: an open dashed ring, an open ring, a half-filled and a filled one. It never stands without its word.
import type { State } from '../../shared/diagnosis/condition-map.ts'

/** Drawn around (0, 0) within the given radius, in the current colour. For use inside an SVG. */
export function StateMark({ state, radius }: { state: State; radius: number }) {
  const stroke = { fill: 'none', stroke: 'currentColor', strokeWidth: radius * 0.28 }
  if (state === 'unknown')
    return <circle r={radius * 0.86} {...stroke} strokeDasharray={`${radius * 0.6} ${radius * 0.5}`} />
  if (state === 'sound') return <circle r={radius * 0.86} {...stroke} />
  if (state === 'watch')
    return (
      <>
        <circle r={radius * 0.86} {...stroke} />
        <path d={`M 0 ${-radius} A ${radius} ${radius} 0 0 1 0 ${radius} Z`} fill="currentColor" />
      </>
    )
  return <circle r={radius} fill="currentColor" />
}

export function StateGlyph({ state }: { state: State }) {
  return (
    <svg className="state-glyph" viewBox="-10 -10 20 20" width="16" height="16" aria-hidden="true">
      <StateMark state={state} radius={8} />
    </svg>
  )
}

export function StateWord({ state }: { state: State }) {
  return (
    <span className="state-word" data-state={state}>
      <StateGlyph state={state} /> {state}
    </span>
  )
}
