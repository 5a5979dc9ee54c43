// Chooses the order in which cylinders are shown and entered: by number or as they fire.
import { useJobPage } from './job-context.ts'

export function OrderSwitch({ label }: { label: string }) {
  const { orderName, setOrderName } = useJobPage()
  return (
    <div className="row" role="group" aria-label={label}>
      {(['cylinder', 'firing'] as const).map(name => (
        <button
          key={name}
          type="button"
          className="tag-filter"
          aria-pressed={orderName === name}
          onClick={() => setOrderName(name)}
        >
          {name} order
        </button>
      ))}
    </div>
  )
}
