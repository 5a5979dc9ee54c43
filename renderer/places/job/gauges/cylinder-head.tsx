// The head of a cylinder's row: its number, which selects the cylinder everywhere.
import { slotsOf } from '../../../../shared/engine/slots.ts'
import { useJobPage } from '../job-context.ts'

export function CylinderHead({ cylinder }: { cylinder: number }) {
  const { job, select } = useJobPage()
  return (
    <th scope="row">
      <button
        type="button"
        aria-label={`Select cylinder ${cylinder}`}
        onClick={() => {
          const slot = slotsOf(job.layout).find(one => one.cylinder === cylinder)
          if (slot) select(slot, 'only')
        }}
      >
        {cylinder}
      </button>
    </th>
  )
}
