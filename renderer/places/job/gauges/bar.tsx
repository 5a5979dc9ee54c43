// A horizontal bar from nought with its limit lines, an inner bar (first puff), and the interval the value lies in.
export type BarProps = {
  /** All in the unit of `full`, the right end of the scale. */
  value: number
  full: number
  inner?: number | undefined
  wet?: number | undefined
  limits?: readonly { at: number; label: string }[]
  plusMinus?: number | undefined
  /** Spoken; the numbers stand in the table beside. */
  label: string
}

export function Bar({ value, full, inner, wet, limits = [], plusMinus, label }: BarProps) {
  const share = (number: number) => `${Math.max(0, Math.min(100, (number / full) * 100))}%`
  return (
    <div className="bar" role="img" aria-label={label}>
      <span className="bar-value" style={{ width: share(value) }} />
      {inner !== undefined && <span className="bar-inner" style={{ width: share(inner) }} />}
      {wet !== undefined && <span className="bar-wet" style={{ width: share(wet) }} />}
      {plusMinus !== undefined && (
        <span className="bar-doubt" style={{ left: share(value - plusMinus), width: share(2 * plusMinus) }} />
      )}
      {limits.map(limit => (
        <span key={limit.label} className="bar-limit" title={limit.label} style={{ left: share(limit.at) }} />
      ))}
    </div>
  )
}
