// What was corrected: every entry as it was made, struck, beside what counts now, with how, who, when and why.
import type { CorrectionHow } from '../../../../../shared/gauges/correction-schema.ts'
import { asCorrected } from '../../../../../shared/job/current.ts'
import type { Pull } from '../../../../../shared/job/pull-schema.ts'
import { useUnits } from '../../../../api/use-settings.ts'
import { pullWords } from '../pull-words.ts'
import { whenOf, whereOf } from './where-of.ts'

export function CorrectedPulls({ pulls }: { pulls: readonly Pull[] }) {
  const units = useUnits()
  const corrected = pulls.filter(one => (one.corrections?.length ?? 0) > 0)
  if (corrected.length === 0) return null
  return (
    <table className="plain-table">
      <caption>Corrected pulls</caption>
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">As entered</th>
          <th scope="col">Counts now</th>
          <th scope="col">Corrections</th>
        </tr>
      </thead>
      <tbody>
        {corrected.map(pull => {
          const entered = pullWords(pull, units)
          const isBack = pull.corrections?.at(-1)?.how.kind === 'as entered'
          return (
            <tr key={pull.id}>
              <th scope="row">{whereOf(pull)}</th>
              <td className="number">{isBack ? entered : <s>{entered}</s>}</td>
              <td className="number">{pullWords(asCorrected(pull), units)}</td>
              <td>
                {pull.corrections?.map(one => (
                  <p key={one.at}>
                    {howWords(one.how)}: {one.reason}{' '}
                    <span className="quiet">
                      ({whenOf(one.at)}
                      {one.by ? `, ${one.by}` : ''})
                    </span>
                  </p>
                ))}
              </td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

function howWords(how: CorrectionHow): string {
  switch (how.kind) {
    case 'scale':
      return `times ${Number(how.factor.toPrecision(4))}`
    case 'offset':
      return how.add < 0 ? `less ${-how.add}` : `plus ${how.add}`
    case 'unit':
      return `read as ${how.unit}`
    default:
      return 'back to as entered'
  }
}
