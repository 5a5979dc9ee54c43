// The Gauges work area: one test at a time, with its caution and steps, its set-up, its entries and its verdicts.
import { useEffect, useRef, useState } from 'react'
import { deference, gauges, judgeAll } from '../../../../shared/gauges/gauges.ts'
import type { TestKind } from '../../../../shared/job/pull-schema.ts'
import { useUnits } from '../../../api/use-settings.ts'
import { useJobPage } from '../job-context.ts'
import { Corrections } from './corrections/corrections.tsx'
import { CsvImport } from './csv/csv-import.tsx'
import { ReadingsCsv } from './csv/readings-csv.tsx'
import { CylinderEntry } from './cylinder-entry.tsx'
import { cylinderTests } from './cylinder-tests/cylinder-tests.ts'
import { EngineForm } from './engine-form.tsx'
import { engineTests } from './engine-tests/engine-tests.ts'
import './entry/entry.css'
import './gauges-panel.css'
import { IdleBand } from './idle-band.tsx'
import { Mode06Table } from './mode-06-table.tsx'
import { Observations } from './observations.tsx'
import { RecordingTest } from './recordings/recording-test.tsx'
import { BeforeAfter } from './pictures/before-after.tsx'
import { GaugePicture } from './pictures/gauge-picture.tsx'
import { RuleCalls } from './pictures/rule-calls.tsx'
import { rememberedTest, rememberTest } from './remembered-test.ts'
import { SetUp } from './set-up/set-up.tsx'
import { type InstrumentChoice, useInstrument } from './set-up/use-instrument.ts'
import { TestChooser } from './test-chooser.tsx'
import { testTitle } from './test-groups.ts'
import { Verdicts } from './verdicts.tsx'

export function GaugesPanel() {
  const { job, tray } = useJobPage()
  const units = useUnits()
  const [test, setTest] = useState<TestKind>(() => rememberedTest(job.id))
  const [isGuided, setGuided] = useState(false)
  const instrument = useInstrument(test)
  const isWalking = isGuided && cylinderTests[test] !== undefined
  const heading = useRef<HTMLHeadingElement>(null)
  // The walk begins at its top, wherever the grid was scrolled to.
  useEffect(() => {
    if (isWalking) heading.current?.scrollIntoView({ block: 'start' })
  }, [isWalking])
  const isRecording = test === 'relative compression' || test === 'crank speed'
  const verdicts = judgeAll(job, tray.stage, units)
  return (
    <div className="gauges-panel">
      {/* The walk has the page to itself: caution and steps, then large digits. */}
      {!isWalking && (
        <TestChooser
          value={test}
          verdicts={verdicts}
          onChange={chosen => {
            rememberTest(job.id, chosen)
            setTest(chosen)
          }}
        />
      )}
      <h2 ref={heading} className={isWalking ? undefined : 'visually-hidden'}>
        {testTitle(test)}
      </h2>
      {/* A recording shows its own caution and steps, at the place where it is taken. */}
      <div className="guide" data-walking={isWalking}>
        {!isRecording && <Caution test={test} />}
        <div className="folds">
          {!isRecording && <Steps test={test} isOpen={isWalking} />}
          {!isWalking && <SetUp test={test} instrument={instrument} />}
        </div>
      </div>
      {isWalking && <SetUp test={test} instrument={instrument} />}
      <Entry key={`${tray.id} ${test}`} {...{ test, instrument, isGuided, setGuided }} />
      <p className="quiet">Readings go to: {tray.stage}.</p>
      {!isWalking && <GaugePicture test={test} />}
      {!isWalking && <Corrections key={`${tray.id} ${test} corrections`} test={test} />}
      <Verdicts verdicts={verdicts.filter(one => one.test === test)} />
      <RuleCalls test={test} />
      <BeforeAfter test={test} />
      <CsvImport test={test} />
      <ReadingsCsv />
    </div>
  )
}

function Caution({ test }: { test: TestKind }) {
  const cautions = gauges.find(one => one.test === test)?.cautions ?? []
  if (cautions.length === 0) return null
  return (
    <section className="caution" aria-label="Caution">
      <strong>Caution</strong>
      <ul>
        {cautions.map(text => (
          <li key={text}>{text}</li>
        ))}
        <li>{deference}</li>
      </ul>
    </section>
  )
}

/** In the guided walk they stand open above the digits. */
function Steps({ test, isOpen }: { test: TestKind; isOpen: boolean }) {
  const steps = gauges.find(one => one.test === test)?.steps ?? []
  if (steps.length === 0) return null
  return (
    <details open={isOpen}>
      <summary>Steps</summary>
      <ol>
        {steps.map(text => (
          <li key={text}>{text}</li>
        ))}
      </ol>
    </details>
  )
}

type EntryProps = {
  test: TestKind
  instrument: InstrumentChoice
  isGuided: boolean
  setGuided: (isGuided: boolean) => void
}

function Entry({ test, instrument, isGuided, setGuided }: EntryProps) {
  const ofCylinders = cylinderTests[test]
  const ofEngine = engineTests[test]
  if (test === 'relative compression' || test === 'crank speed') return <RecordingTest test={test} />
  if (test === 'observation') return <Observations />
  if (ofCylinders)
    return <CylinderEntry define={ofCylinders} instrument={instrument.chosen} {...{ isGuided, setGuided }} />
  if (!ofEngine) return null
  return (
    <>
      <EngineForm define={ofEngine} instrument={instrument.chosen} />
      {test === 'vacuum' && <IdleBand />}
      {test === 'mode 06' && <Mode06Table />}
    </>
  )
}
