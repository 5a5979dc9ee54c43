// The readings of a test as one picture that prints in grey, with the same numbers in a table beside it.
import type { TestKind } from '../../../../../shared/job/pull-schema.ts'
import { formatNumber } from '../../../../../shared/units/format.ts'
import { useUnits } from '../../../../api/use-settings.ts'
import { useJobPage } from '../../job-context.ts'
import './pictures.css'
import { type PictureData, type PictureRow, pictureData } from './picture-data.ts'

const width = 640
const left = 40
const right = 16
const top = 8
const step = 34

export function GaugePicture({ test }: { test: TestKind }) {
  const { job, tray } = useJobPage()
  const data = pictureData(job, test, tray.stage, useUnits())
  if (data === undefined) return null
  return (
    <details className="gauge-picture">
      <summary>Picture for print</summary>
      <Picture data={data} />
      <Numbers data={data} />
    </details>
  )
}

function Picture({ data }: { data: PictureData }) {
  const { rows, title, unit, digits } = data
  // The leftmost line is named first: no line then runs through another's words.
  const limits = data.limits.toSorted((a, b) => a.at - b.at)
  const most = Math.max(
    1e-9,
    ...rows.flatMap(row => [row.value + row.plusMinus, row.wet ?? 0, row.limit ?? 0]),
    ...limits.map(one => one.at),
  )
  const x = (value: number) => left + (Math.max(0, value) / (most * 1.05)) * (width - left - right)
  const bottom = top + rows.length * step
  const height = bottom + 8 + limits.length * 18
  return (
    <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={`${title}; its numbers are in the table`}>
      <line x1={left} x2={left} y1={top} y2={bottom} className="picture-line" />
      {rows.map((row, at) => (
        <Row key={row.cylinder} row={row} x={x} y={top + at * step} shown={formatNumber(row.value, digits)} />
      ))}
      {limits.map((one, at) => (
        <g key={one.label}>
          <line x1={x(one.at)} x2={x(one.at)} y1={top} y2={bottom + 6 + at * 18} className="picture-limit" />
          <text x={x(one.at) - 4} y={bottom + 18 + at * 18} textAnchor="end">
            {one.label}: {formatNumber(one.at, digits)} {unit}
          </text>
        </g>
      ))}
    </svg>
  )
}

type RowProps = { row: PictureRow; x: (value: number) => number; y: number; shown: string }

function Row({ row, x, y, shown }: RowProps) {
  const { cylinder, value, plusMinus, firstPuff, wet, limit } = row
  const [low, high] = [x(value - plusMinus), x(value + plusMinus)]
  return (
    <g>
      <text x={left - 8} y={y + 16} textAnchor="end" className="picture-name">
        {cylinder}
      </text>
      <rect x={left} y={y + 2} width={x(value) - left} height={18} className="picture-bar" />
      {firstPuff !== undefined && (
        <rect x={left} y={y + 7} width={x(firstPuff) - left} height={8} className="picture-inner" />
      )}
      {wet !== undefined && (
        <rect x={left} y={y + 22} width={x(wet) - left} height={6} className="picture-wet" />
      )}
      <path d={`M${low} ${y + 11}H${high}M${low} ${y + 6}v10M${high} ${y + 6}v10`} className="picture-line" />
      {limit !== undefined && (
        <line x1={x(limit)} x2={x(limit)} y1={y} y2={y + 24} className="picture-limit" />
      )}
      <text x={left + 6} y={y + 16} className="picture-value">
        {firstPuff === undefined ? shown : ''}
      </text>
    </g>
  )
}

function Numbers({ data }: { data: PictureData }) {
  const { rows, title, unit, digits, limits, limitTitle } = data
  const show = (value: number | undefined) => (value === undefined ? '' : formatNumber(value, digits))
  const hasPuff = rows.some(row => row.firstPuff !== undefined)
  const hasWet = rows.some(row => row.wet !== undefined)
  return (
    <>
      <table className="plain-table">
        <caption>
          {title} ({unit})
        </caption>
        <thead>
          <tr>
            <th scope="col">Cylinder</th>
            <th scope="col">Middle</th>
            <th scope="col">±</th>
            {hasPuff && <th scope="col">First puff (dark, inside)</th>}
            {hasWet && <th scope="col">Wet (outlined, below)</th>}
            {limitTitle !== undefined && <th scope="col">{limitTitle} (dashed)</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map(row => (
            <tr key={row.cylinder}>
              <th scope="row">{row.cylinder}</th>
              <td className="number">{show(row.value)}</td>
              <td className="number">{formatNumber(row.plusMinus, digits + 1)}</td>
              {hasPuff && <td className="number">{show(row.firstPuff)}</td>}
              {hasWet && <td className="number">{show(row.wet)}</td>}
              {limitTitle !== undefined && <td className="number">{show(row.limit)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
      {limits.length > 0 && (
        <p className="quiet">
          Dashed lines: {limits.map(one => `${one.label} ${show(one.at)} ${unit}`).join('; ')}.
        </p>
      )}
    </>
  )
}
