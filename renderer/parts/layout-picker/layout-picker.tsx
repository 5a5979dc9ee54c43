// Picks the engine: arrangement, cylinder count and plugs first, then numbering and firing order drawn as small decks.
import { PencilRuler } from 'lucide-react'
import { useId, useState } from 'react'
import { builtInLayouts, withPlugsPerCylinder } from '../../../shared/engine/layouts.ts'
import type { Arrangement, Layout } from '../../../shared/engine/layout-schema.ts'
import { cylindersOf } from '../../../shared/engine/relations.ts'
import { useOwnLayouts } from '../../api/use-settings.ts'
import { Button } from '../button.tsx'
import { Segmented } from '../segmented.tsx'
import { LayoutEditor } from './layout-editor.tsx'
import './layout-picker.css'
import { LayoutSketch } from './layout-sketch.tsx'

type LayoutPickerProps = { layout: Layout | undefined; onPick: (layout: Layout) => void }
type Group = Arrangement | 'own'

const countOf = (layout: Layout): string => String(cylindersOf(layout).length)
const orderOf = (layout: Layout): string => layout.firingOrder.join('-')
const withPlugs = (layout: Layout, plugs: '1' | '2'): Layout =>
  withPlugsPerCylinder(layout, plugs === '2' ? 2 : 1)
const inGroup = (group: Group): Layout[] => builtInLayouts.filter(one => one.arrangement === group)

export function LayoutPicker({ layout, onPick }: LayoutPickerProps) {
  const name = useId()
  const own = useOwnLayouts()
  const [group, setGroup] = useState<Group>(layout?.own ? 'own' : (layout?.arrangement ?? 'inline'))
  const [wanted, setWanted] = useState(layout ? countOf(layout) : '4')
  const [plugs, setPlugs] = useState<'1' | '2'>(layout?.plugsPerCylinder === 2 ? '2' : '1')
  const [drawing, setDrawing] = useState(false)
  const counts = [...new Set(inGroup(group).map(countOf))].toSorted((a, b) => Number(a) - Number(b))
  const count = counts.includes(wanted) ? wanted : (counts[0] ?? wanted)
  const shown =
    group === 'own'
      ? own
      : inGroup(group)
          .filter(one => countOf(one) === count)
          .map(one => withPlugs(one, plugs))
  /** What is chosen is always in sight: the first of the new list, until another one is picked. */
  const pickFirst = (list: readonly Layout[], cylinders: string, each: '1' | '2') => {
    const first = list.find(one => countOf(one) === cylinders) ?? list[0]
    if (first) onPick(first.own ? first : withPlugs(first, each))
    if (first) setWanted(countOf(first))
  }

  return (
    <fieldset className="layout-picker">
      <legend>Engine</legend>
      <div className="layout-questions">
        <Segmented<Group>
          label="Arrangement"
          labelShown
          value={group}
          onChange={next => {
            setGroup(next)
            pickFirst(next === 'own' ? own : inGroup(next), wanted, plugs)
          }}
          options={[
            { value: 'inline', text: 'Inline' },
            { value: 'vee', text: 'Vee' },
            { value: 'flat', text: 'Flat' },
            {
              value: 'own',
              text: (
                <>
                  Own <small>{own.length}</small>
                </>
              ),
            },
          ]}
        />
        {group !== 'own' && (
          <>
            <Segmented
              label="Cylinders"
              labelShown
              value={count}
              onChange={next => {
                setWanted(next)
                pickFirst(inGroup(group), next, plugs)
              }}
              options={counts.map(one => ({ value: one, text: one }))}
            />
            <Segmented
              label="Plugs a cylinder"
              labelShown
              value={plugs}
              onChange={next => {
                setPlugs(next)
                if (layout && !layout.own) onPick(withPlugs(layout, next))
              }}
              options={[
                { value: '1', text: '1' },
                { value: '2', text: '2' },
              ]}
            />
          </>
        )}
        <span className="grow" />
        <Button onPress={() => setDrawing(true)}>
          <PencilRuler aria-hidden="true" /> Draw another
        </Button>
      </div>
      <div className="layout-choices" role="radiogroup" aria-label="Numbering and firing order">
        {shown.map(one => (
          <label key={one.id} className="layout-choice">
            <input type="radio" name={name} checked={layout?.id === one.id} onChange={() => onPick(one)} />
            <LayoutSketch layout={one} />
            <strong>{orderOf(one)}</strong>
            <span>{one.name.replace(`, ${orderOf(one)}`, '')}</span>
          </label>
        ))}
        {shown.length === 0 && <p>No layout of your own yet: draw one.</p>}
      </div>
      <p className="field-remark">
        {layout ? `Chosen: ${layout.name}. ` : ''}Numbering and cylinder 1 differ by maker: compare with the
        engine or its service information.
      </p>
      {drawing && (
        <LayoutEditor
          start={layout}
          onClose={() => setDrawing(false)}
          onSaved={saved => {
            setGroup('own')
            onPick(saved)
            setDrawing(false)
          }}
        />
      )}
    </fieldset>
  )
}
