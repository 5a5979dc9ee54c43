// Picks the engine: arrangement and cylinder count first, then numbering and firing order drawn as small decks.
import { PencilRuler } from 'lucide-react'
import { useState } from 'react'
import { builtInLayouts, withPlugsPerCylinder } from '../../../shared/engine/layouts.ts'
import type { Layout } from '../../../shared/engine/layout-schema.ts'
import { cylindersOf } from '../../../shared/engine/relations.ts'
import { useOwnLayouts } from '../../api/use-settings.ts'
import { Button } from '../button.tsx'
import { LayoutSketch } from './layout-sketch.tsx'
import { LayoutEditor } from './layout-editor.tsx'
import './layout-picker.css'

type LayoutPickerProps = { layout: Layout | undefined; onPick: (layout: Layout) => void }

const familyOf = (layout: Layout): string => `${layout.arrangement} ${cylindersOf(layout).length}`

export function LayoutPicker({ layout, onPick }: LayoutPickerProps) {
  const own = useOwnLayouts()
  const [family, setFamily] = useState(() => (layout ? familyOf(layout) : 'inline 4'))
  const [plugs, setPlugs] = useState<1 | 2>(layout?.plugsPerCylinder ?? 1)
  const [drawing, setDrawing] = useState(false)
  const families = [...new Set(builtInLayouts.map(familyOf))]
  const shown =
    family === 'own'
      ? own
      : builtInLayouts.filter(one => familyOf(one) === family).map(one => withPlugsPerCylinder(one, plugs))

  return (
    <fieldset className="layout-picker">
      <legend>Engine</legend>
      <div className="row">
        <label className="field">
          <span className="field-label">Arrangement</span>
          <select value={family} onChange={event => setFamily(event.target.value)}>
            {families.map(one => (
              <option key={one} value={one}>
                {one === 'inline 1' ? 'single cylinder' : one}
              </option>
            ))}
            <option value="own">own layouts ({own.length})</option>
          </select>
        </label>
        <label className="field">
          <span className="field-label">Plugs a cylinder</span>
          <select
            value={plugs}
            disabled={family === 'own'}
            onChange={event => {
              const count = event.target.value === '2' ? 2 : 1
              setPlugs(count)
              if (layout && !layout.own) onPick(withPlugsPerCylinder(layout, count))
            }}
          >
            <option>1</option>
            <option>2</option>
          </select>
        </label>
        <Button onPress={() => setDrawing(true)}>
          <PencilRuler aria-hidden="true" /> Draw another
        </Button>
      </div>
      <div className="layout-choices" role="radiogroup" aria-label="Numbering and firing order">
        {shown.map(one => (
          <label key={one.id} className="layout-choice">
            <input type="radio" name="layout" checked={layout?.id === one.id} onChange={() => onPick(one)} />
            <LayoutSketch layout={one} />
            <span>{one.name}</span>
          </label>
        ))}
        {shown.length === 0 && <p>No own layout yet: draw one.</p>}
      </div>
      <p className="field-remark">
        Numbering and cylinder 1 differ by maker: compare with the engine or its service information.
      </p>
      {drawing && (
        <LayoutEditor
          start={layout}
          onClose={() => setDrawing(false)}
          onSaved={saved => {
            setFamily('own')
            onPick(saved)
            setDrawing(false)
          }}
        />
      )}
    </fieldset>
  )
}
