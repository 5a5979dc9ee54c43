// Draws an own layout: banks front to rear, firing order, where the front points; checked as one types.
import { useState } from 'react'
import { checkLayout } from '../../../shared/engine/check-layout.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { inWords } from '../../api/client.ts'
import { useLayoutActions } from '../../api/use-settings.ts'
import { Button } from '../button.tsx'
import { Dialog } from '../dialog.tsx'
import { LayoutSketch } from './layout-sketch.tsx'

type LayoutEditorProps = { start: Layout | undefined; onClose: () => void; onSaved: (layout: Layout) => void }

const asText = (numbers: readonly number[] | undefined): string => (numbers ?? []).join(' ')
const asNumbers = (text: string): number[] =>
  text
    .split(/[^0-9]+/)
    .filter(part => part !== '')
    .map(Number)

const arrangements = ['inline', 'vee', 'flat'] as const
const fronts = ['top', 'bottom', 'left', 'right'] as const
const oneOf = <T extends string>(options: readonly T[], value: string, fallback: T): T =>
  options.find(one => one === value) ?? fallback

export function LayoutEditor({ start, onClose, onSaved }: LayoutEditorProps) {
  const [name, setName] = useState(start ? `${start.name} (own)` : 'Own layout')
  const [arrangement, setArrangement] = useState<Layout['arrangement']>(start?.arrangement ?? 'inline')
  const [first, setFirst] = useState(asText(start?.banks[0]?.cylinders))
  const [second, setSecond] = useState(asText(start?.banks[1]?.cylinders))
  const [order, setOrder] = useState(asText(start?.firingOrder))
  const [intervals, setIntervals] = useState('')
  const [front, setFront] = useState<Layout['front']>(start?.front ?? 'top')
  const [plugs, setPlugs] = useState<1 | 2>(start?.plugsPerCylinder ?? 1)
  const [id] = useState(() => `own-${crypto.randomUUID().slice(0, 12)}`)
  const { save } = useLayoutActions()

  const firingOrder = asNumbers(order)
  const banks = [
    { name: arrangement === 'inline' ? 'row' : 'left bank', cylinders: asNumbers(first) },
    ...(arrangement === 'inline' ? [] : [{ name: 'right bank', cylinders: asNumbers(second) }]),
  ].filter(bank => bank.cylinders.length > 0)
  const layout: Layout = {
    id,
    name: name.trim() || 'Own layout',
    arrangement,
    banks,
    firingOrder,
    intervalsDeg:
      intervals.trim() === ''
        ? firingOrder.map(() => 720 / Math.max(1, firingOrder.length))
        : asNumbers(intervals),
    plugsPerCylinder: plugs,
    front,
    own: true,
  }
  const tooMany = banks.flatMap(bank => bank.cylinders).some(cylinder => cylinder < 1 || cylinder > 16)
  const problems = tooMany
    ? ['Cylinders are numbered from 1 to at most 16.']
    : checkLayout(layout).map(one => one.message)
  const drawable = banks.length > 0 && !tooMany

  return (
    <Dialog title="Own layout" wide onClose={onClose}>
      <div className="layout-editor">
        <div className="layout-editor-fields">
          <label className="field">
            <span className="field-label">Name</span>
            <input value={name} maxLength={120} onChange={event => setName(event.target.value)} />
          </label>
          <label className="field">
            <span className="field-label">Arrangement</span>
            <select
              value={arrangement}
              onChange={event => setArrangement(oneOf(arrangements, event.target.value, 'inline'))}
            >
              {arrangements.map(one => (
                <option key={one}>{one}</option>
              ))}
            </select>
          </label>
          <label className="field">
            <span className="field-label">
              {arrangement === 'inline' ? 'Cylinders' : 'Left bank'}, front to rear
            </span>
            <input value={first} inputMode="numeric" onChange={event => setFirst(event.target.value)} />
          </label>
          {arrangement !== 'inline' && (
            <label className="field">
              <span className="field-label">Right bank, front to rear</span>
              <input value={second} inputMode="numeric" onChange={event => setSecond(event.target.value)} />
            </label>
          )}
          <label className="field">
            <span className="field-label">Firing order</span>
            <input value={order} inputMode="numeric" onChange={event => setOrder(event.target.value)} />
          </label>
          <label className="field">
            <span className="field-label">Degrees between firings (empty: even)</span>
            <input
              value={intervals}
              inputMode="numeric"
              onChange={event => setIntervals(event.target.value)}
            />
          </label>
          <label className="field">
            <span className="field-label">Front of the engine points to</span>
            <select value={front} onChange={event => setFront(oneOf(fronts, event.target.value, 'top'))}>
              {fronts.map(one => (
                <option key={one}>{one}</option>
              ))}
            </select>
          </label>
          <label className="field">
            <span className="field-label">Plugs a cylinder</span>
            <select value={plugs} onChange={event => setPlugs(event.target.value === '2' ? 2 : 1)}>
              <option>1</option>
              <option>2</option>
            </select>
          </label>
        </div>
        {drawable && <LayoutSketch layout={layout} />}
      </div>
      <div role="status">
        {problems.map(problem => (
          <p key={problem} className="field-error">
            {problem}
          </p>
        ))}
        {save.error && <p className="field-error">{inWords(save.error)}</p>}
      </div>
      <div className="dialog-buttons">
        <Button onPress={onClose}>Cancel</Button>
        <Button
          kind="main"
          isDisabled={problems.length > 0 || !drawable || save.isPending}
          onPress={() => save.mutate(layout, { onSuccess: () => onSaved(layout) })}
        >
          Keep this layout
        </Button>
      </div>
    </Dialog>
  )
}
