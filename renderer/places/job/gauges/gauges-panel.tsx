// The Gauges work area: one test at a time, with its caution and steps, its set-up, its entries and its verdicts.
import { useState } from 'react'
import { deference, gauges, judgeAll } from '../../../../shared/gauges/gauges.ts'
import type { TestKind } from '../../../../shared/job/pull-schema.ts'
import { useUnits } from '../../../api/use-settings.ts'
import { useJobPage } from '../job-context.ts'
import { CylinderEntry } from './cylinder-entry.tsx'
import { cylinderTests } from './cylinder-tests/cylinder-tests.ts'
import { EngineForm } from './engine-form.tsx'
import { engineTests } from './engine-tests/engine-tests.ts'
import './entry/entry.css'
import './gauges-panel.css'
import { IdleBand } from './idle-band.tsx'
import { Observations } from './observations.tsx'
import { RecordingTest } from './recordings/recording-test.tsx'
import { rememberedTest, rememberTest } from './remembered-test.ts'
import { InstrumentPicker } from './set-up/instrument-picker.tsx'
import { SetUpBar } from './set-up/set-up-bar.tsx'
import { type InstrumentChoice, useInstrument } from './set-up/use-instrument.ts'
import { TestChooser } from './test-chooser.tsx'
import { Verdicts } from './verdicts.tsx'

export function GaugesPanel() {
  const { job, tray } = useJobPage()
  const units = useUnits()
  const [test, setTest] = useState<TestKind>(() => rememberedTest(job.id))
  const instrument = useInstrument(test)
  const verdicts = judgeAll(job, tray.stage, units)
  return (
    <div className="gauges-panel">
      <TestChooser
        value={test}
        verdicts={verdicts}
        onChange={chosen => {
          rememberTest(job.id, chosen)
          setTest(chosen)
        }}
      />
      {/* A recording shows its own, at the place where it is taken. */}
      {test !== 'relative compression' && test !== 'crank speed' && <Guide test={test} />}
      <SetUpBar test={test} />
      <InstrumentPicker choice={instrument} />
      <Entry key={`${tray.id} ${test}`} test={test} instrument={instrument} />
      <p className="quiet">Readings go to: {tray.stage}.</p>
      <Verdicts verdicts={verdicts.filter(one => one.test === test)} />
    </div>
  )
}

function Guide({ test }: { test: TestKind }) {
  const gauge = gauges.find(one => one.test === test)
  return (
    <>
      <section className="caution" aria-label="Caution">
        <strong>Caution</strong>
        <ul>
          {gauge?.cautions.map(text => (
            <li key={text}>{text}</li>
          ))}
          <li>{deference}</li>
        </ul>
      </section>
      {gauge && gauge.steps.length > 0 && (
        <details>
          <summary>Steps</summary>
          <ol>
            {gauge.steps.map(text => (
              <li key={text}>{text}</li>
            ))}
          </ol>
        </details>
      )}
    </>
  )
}

function Entry({ test, instrument }: { test: TestKind; instrument: InstrumentChoice }) {
  const ofCylinders = cylinderTests[test]
  const ofEngine = engineTests[test]
  if (test === 'relative compression' || test === 'crank speed') return <RecordingTest test={test} />
  if (test === 'observation') return <Observations />
  if (ofCylinders) return <CylinderEntry define={ofCylinders} instrument={instrument.chosen} />
  if (!ofEngine) return null
  return (
    <>
      <EngineForm define={ofEngine} instrument={instrument.chosen} />
      {test === 'vacuum' && <IdleBand />}
    </>
  )
}
