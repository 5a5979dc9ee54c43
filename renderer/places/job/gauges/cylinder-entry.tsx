// A test made cylinder by cylinder: what is typed once for all, then the grid or the guided walk over the same fields.
import { useState } from 'react'
import { useUnits } from '../../../api/use-settings.ts'
import { useJobPage } from '../job-context.ts'
import { OrderSwitch } from '../order-switch.tsx'
import { CylinderGrid } from './cylinder-grid.tsx'
import type { DefineCylinderTest } from './cylinder-tests/cylinder-test.ts'
import { FormField } from './entry/form-field.tsx'
import { nextField } from './entry/walk.ts'
import { GuidedWalk } from './guided-walk.tsx'
import { useTypedCylinders } from './use-typed-cylinders.ts'

type CylinderEntryProps = { define: DefineCylinderTest; instrument: string | undefined }

export function CylinderEntry({ define, instrument }: CylinderEntryProps) {
  const { readOnly } = useJobPage()
  const [isGuided, setGuided] = useState(false)
  const entry = useTypedCylinders(define(useUnits()), instrument)
  return (
    <>
      <div className="row">
        <button
          type="button"
          className="tag-filter"
          aria-pressed={isGuided}
          onClick={() => setGuided(!isGuided)}
        >
          One cylinder at a time
        </button>
        <OrderSwitch label="Order of entry" />
        {entry.hasMore && (
          <button
            type="button"
            className="tag-filter"
            aria-pressed={entry.more}
            onClick={() => entry.setMore(!entry.more)}
          >
            More fields
          </button>
        )}
      </div>
      {entry.test.settings.length > 0 && (
        <div className="form-fields" data-walk>
          {entry.test.settings.map(field => (
            <FormField
              key={field.name}
              field={field}
              of="for all cylinders"
              value={entry.settings[field.name] ?? ''}
              disabled={readOnly}
              onChange={text => entry.set(field.name, text)}
              onEnter={nextField}
            />
          ))}
        </div>
      )}
      {isGuided ? <GuidedWalk entry={entry} /> : <CylinderGrid entry={entry} />}
    </>
  )
}
