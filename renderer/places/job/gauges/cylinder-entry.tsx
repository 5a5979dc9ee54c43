// A test made cylinder by cylinder: what is typed once for all, then the grid or the guided walk over the same fields.
import { useUnits } from '../../../api/use-settings.ts'
import { useJobPage } from '../job-context.ts'
import { OrderSwitch } from '../order-switch.tsx'
import { CylinderGrid } from './cylinder-grid.tsx'
import type { DefineCylinderTest } from './cylinder-tests/cylinder-test.ts'
import { FormField } from './entry/form-field.tsx'
import { nextField } from './entry/walk.ts'
import { GuidedWalk } from './guided-walk.tsx'
import { useTypedCylinders } from './use-typed-cylinders.ts'

type CylinderEntryProps = {
  define: DefineCylinderTest
  instrument: string | undefined
  isGuided: boolean
  setGuided: (isGuided: boolean) => void
}

export function CylinderEntry({ define, instrument, isGuided, setGuided }: CylinderEntryProps) {
  const { readOnly } = useJobPage()
  const entry = useTypedCylinders(define(useUnits()), instrument)
  return (
    <>
      <div className="entry-tools" data-walk>
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
        <span className="grow" />
        {entry.hasMore && (
          <button
            type="button"
            className="tag-filter"
            aria-label="More fields"
            aria-pressed={entry.more}
            onClick={() => entry.setMore(!entry.more)}
          >
            More
          </button>
        )}
        <OrderSwitch label="Order of entry" />
        <button
          type="button"
          className="tag-filter"
          aria-pressed={isGuided}
          onClick={() => setGuided(!isGuided)}
        >
          One cylinder at a time
        </button>
      </div>
      {isGuided ? <GuidedWalk entry={entry} /> : <CylinderGrid entry={entry} />}
    </>
  )
}
