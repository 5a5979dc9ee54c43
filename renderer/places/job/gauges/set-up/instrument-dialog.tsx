// A tester added to the job: its name, what it can resolve, how true it is, and what belongs to its readings.
import { useState } from 'react'
import type { Instrument } from '../../../../../shared/gauges/instrument-schema.ts'
import { parseLength } from '../../../../../shared/units/parse.ts'
import { useUnits } from '../../../../api/use-settings.ts'
import { Button } from '../../../../parts/button.tsx'
import { Dialog } from '../../../../parts/dialog.tsx'
import { type Field, given, isBlank, isWrong, type Typed } from '../entry/field.ts'
import { FormField } from '../entry/form-field.tsx'
import { nextField } from '../entry/walk.ts'
import { readMillilitres, readPercent, readSize } from '../entry/read-number.ts'

type InstrumentDialogProps = {
  kind: Instrument['kind']
  onClose: () => void
  onAdd: (instrument: Instrument) => void
}

const readClass = (text: string): number | null => {
  const value = readPercent(text)
  return value !== null && value > 0 && value <= 50 ? value : null
}

export function InstrumentDialog({ kind, onClose, onAdd }: InstrumentDialogProps) {
  const units = useUnits()
  const orifice = (text: string) => parseLength(text, units.length)
  const unit = {
    'compression gauge': units.pressure,
    'leak-down tester': '%',
    'fuel pressure gauge': units.pressure,
    'vacuum gauge': units.vacuum,
    'spark tester': 'kV',
    ohmmeter: 'Ω',
    'scan tool': '%',
    'current clamp': 'A',
  }[kind]
  const fields: readonly Field[] = [
    { name: 'name', title: 'Name', kind: 'text', mostLetters: 80 },
    { name: 'division', title: 'One division', unit, kind: 'number', parse: readSize },
    { name: 'class', title: 'Largest error', unit: '% of full scale', kind: 'number', parse: readClass },
    { name: 'full', title: 'Full scale', unit, kind: 'number', parse: readSize },
    ...(kind === 'compression gauge'
      ? [
          {
            name: 'hose',
            title: 'Hose beyond the valve',
            unit: 'ml',
            kind: 'number',
            parse: readMillilitres,
          } as const,
        ]
      : []),
    ...(kind === 'leak-down tester'
      ? [{ name: 'orifice', title: 'Orifice', unit: units.length, kind: 'number', parse: orifice } as const]
      : []),
  ]
  const [typed, setTyped] = useState<Typed>({})
  const isReady = !isBlank(typed.name) && !fields.some(field => isWrong(field, typed[field.name]))
  const add = () => {
    if (!isReady) return
    const division = given(typed.division, readSize)
    const accuracyPercent = given(typed.class, readClass)
    const fullScale = given(typed.full, readSize)
    const hoseMillilitres = given(typed.hose, readMillilitres)
    const bore = given(typed.orifice, orifice)
    onAdd({
      id: crypto.randomUUID(),
      kind,
      name: (typed.name ?? '').trim(),
      ...((division ?? fullScale) !== undefined && { unit }),
      ...(division !== undefined && { division }),
      ...(accuracyPercent !== undefined && { accuracyPercent }),
      ...(fullScale !== undefined && { fullScale }),
      ...(hoseMillilitres !== undefined && { hoseMillilitres }),
      ...(bore && { orifice: bore }),
    })
  }
  return (
    <Dialog title={`Add a ${kind}`} onClose={onClose}>
      <div className="form-fields" data-walk>
        {fields.map((field, at) => (
          <FormField
            key={field.name}
            field={field}
            value={typed[field.name] ?? ''}
            disabled={false}
            onChange={text => setTyped(now => ({ ...now, [field.name]: text }))}
            onEnter={from => {
              if (at === fields.length - 1 && isReady) add()
              else nextField(from)
            }}
          />
        ))}
      </div>
      <div className="dialog-buttons">
        <Button onPress={onClose}>Leave it</Button>
        <Button kind="main" onPress={add} isDisabled={!isReady}>
          Add the tester
        </Button>
      </div>
    </Dialog>
  )
}
