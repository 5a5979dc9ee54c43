// The recording drawn from its envelope, with what was found marked on it. One hue: the lowest place is a filled mark, the
// others are open ones, those left out are dashed. All of it stands in the table beside in words.
import { useId, useState } from 'react'
import type { RecordingAnalysis } from '../../../../../shared/contract/recordings-contract.ts'
import { drawn, levelsBetween, ticksBetween } from './picture-scale.ts'

const [width, height, top, bottom, left] = [760, 250, 44, 222, 52]
const windows = [10, 5, 2, 1] as const
/** More marks than this would cover each other. */
const mostLabels = 30

type RecordingPictureProps = { analysis: RecordingAnalysis; marked: string }

export function RecordingPicture({ analysis, marked }: RecordingPictureProps) {
  const { envelope, events, entry } = analysis
  const whole = Math.max(0.001, envelope.to - envelope.from)
  const [seconds, setSeconds] = useState<number>()
  const [start, setStart] = useState(envelope.from)
  const pick = useId()
  const frame = useId()
  const span = Math.min(seconds ?? whole, whole)
  const from = Math.max(envelope.from, Math.min(start, envelope.to - span))
  // The in-rush of the starter is many times as high as the humps: the frame is made for what was found.
  const [firstEvent, lastEvent] = [events[0], events.at(-1)]
  const levels =
    firstEvent && lastEvent ? levelsBetween(envelope, firstEvent.time, lastEvent.time) : undefined
  const shown = drawn(envelope, from, from + span, { width: width - left, top, bottom }, levels)
  const x = (time: number) => left + ((time - from) / span) * (width - left)
  const inside = events.filter(event => event.time >= from && event.time <= from + span)
  const lowest = entry?.values.toSorted((a, b) => a.percent - b.percent)[0]
  const kept = events.filter(event => !event.leftOut).length
  const words =
    events.length === 0
      ? `The recording over ${whole.toFixed(1)} seconds; nothing was found in it.`
      : `The recording over ${whole.toFixed(1)} seconds with ${events.length} ${marked} marked, ${kept} of them used.${
          lowest
            ? ` Lowest: ${lowest.cylinder === undefined ? `position ${lowest.position}` : `cylinder ${lowest.cylinder}`}.`
            : ''
        }`
  return (
    <figure className="recording-picture">
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words}>
        <title>{words}</title>
        {ticksBetween(shown.low, shown.high, 4).map(tick => (
          <g key={`level ${tick}`} className="recording-tick">
            <line x1={left} x2={width} y1={shown.y(tick)} y2={shown.y(tick)} />
            <text x={left - 6} y={shown.y(tick) + 4} textAnchor="end">
              {tick}
            </text>
          </g>
        ))}
        {ticksBetween(from, from + span, 8).map(tick => (
          <text
            key={`time ${tick}`}
            className="recording-time"
            x={x(tick)}
            y={height - 8}
            textAnchor="middle"
          >
            {tick} s
          </text>
        ))}
        <text className="recording-time" x={left - 6} y={height - 8} textAnchor="end">
          {envelope.unit}
        </text>
        <clipPath id={frame}>
          <rect x={left} y={top} width={width - left} height={bottom - top} />
        </clipPath>
        <g clipPath={`url(#${frame})`}>
          <path className="recording-course" transform={`translate(${left} 0)`} d={shown.path} />
        </g>
        {inside.map(event => (
          <g
            key={event.time}
            className="recording-mark"
            data-left-out={event.leftOut}
            data-lowest={!event.leftOut && event.position === lowest?.position}
            transform={`translate(${x(event.time)} ${top - 6})`}
          >
            <line y1={0} y2={bottom - top + 6} />
            <path d="M-5 -9 L5 -9 L0 0 Z" />
            {inside.length <= mostLabels && (
              <text y={-14} textAnchor="middle">
                {event.cylinder ?? event.position}
              </text>
            )}
          </g>
        ))}
      </svg>
      <figcaption className="row">
        <span className="quiet">
          Marks: {marked}
          {inside.length <= mostLabels
            ? `, by ${entry?.synced ? 'cylinder' : 'position'}`
            : ' (look closer for their numbers)'}
          {lowest ? '; filled: the lowest' : ''}; dashed: left out.
          {shown.isCut && ' What runs out of the frame is not drawn.'}
        </span>
        {whole > 1.5 && (
          <>
            <label htmlFor={pick} className="quiet">
              Show
            </label>
            <select
              id={pick}
              className="input"
              value={seconds ?? ''}
              onChange={event =>
                setSeconds(event.target.value === '' ? undefined : Number(event.target.value))
              }
            >
              <option value="">all</option>
              {windows
                .filter(one => one < whole)
                .map(one => (
                  <option key={one} value={one}>
                    {one} s
                  </option>
                ))}
            </select>
            {span < whole && (
              <input
                type="range"
                aria-label="From, in seconds"
                aria-valuetext={`from ${from.toFixed(1)} seconds`}
                min={envelope.from}
                max={envelope.to - span}
                step={span / 20}
                value={from}
                onChange={event => setStart(Number(event.target.value))}
              />
            )}
          </>
        )}
      </figcaption>
    </figure>
  )
}
