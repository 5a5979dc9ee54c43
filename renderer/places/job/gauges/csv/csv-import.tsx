// Readings from a spreadsheet: the file is looked at, its columns confirmed, every row shown as what it will be or why not;
// nothing joins the job before that.
import { useEffect, useId, useRef, useState } from 'react'
import type { CsvSeparator, CsvTable } from '../../../../../shared/contract/readings-csv-contract.ts'
import { cylindersOf } from '../../../../../shared/engine/relations.ts'
import { type CsvTest, csvTests } from '../../../../../shared/gauges/readings-csv-fields.ts'
import {
  type CsvMapping,
  guessCsvMapping,
  readCsvRows,
} from '../../../../../shared/gauges/readings-csv-in.ts'
import type { Pull, TestKind } from '../../../../../shared/job/pull-schema.ts'
import { inWords } from '../../../../api/client.ts'
import { useHost } from '../../../../api/host-context.ts'
import { useUnits } from '../../../../api/use-settings.ts'
import { Button } from '../../../../parts/button.tsx'
import { useNotices } from '../../../../parts/notices.tsx'
import { useJobPage } from '../../job-context.ts'
import { testTitle } from '../test-groups.ts'
import './csv.css'
import { CsvColumns } from './csv-columns.tsx'
import { CsvRows } from './csv-rows.tsx'

type Looked = { ref: string; table: CsvTable; mapping: CsvMapping }

const isCsvTest = (test: TestKind): test is CsvTest => csvTests.some(one => one === test)

/** For tests that a table of readings can hold; nothing for the others. */
export function CsvImport({ test }: { test: TestKind }) {
  return isCsvTest(test) ? <ImportOf key={test} test={test} /> : null
}

function ImportOf({ test }: { test: CsvTest }) {
  const { api, upload } = useHost()
  const { job, tray, apply, readOnly } = useJobPage()
  const { say } = useNotices()
  const units = useUnits()
  const input = useRef<HTMLInputElement>(null)
  const stop = useRef<AbortController | undefined>(undefined)
  const headingId = useId()
  const [looked, setLooked] = useState<Looked>()
  const [busy, setBusy] = useState<string>()
  const [problem, setProblem] = useState<string>()

  const drop = (ref: string) => void api.recordings.discard({ ref }).catch(() => undefined)
  const waitingRef = looked?.ref
  useEffect(
    () => () => {
      if (waitingRef !== undefined) void api.recordings.discard({ ref: waitingRef }).catch(() => undefined)
    },
    [waitingRef, api],
  )

  const look = async (file: File) => {
    const controller = new AbortController()
    stop.current = controller
    setProblem(undefined)
    setBusy(`Looking at ${file.name}`)
    try {
      const ref = await upload(file, controller.signal)
      try {
        const table = await api.readingsCsv.read({ ref }, { signal: controller.signal })
        setLooked({ ref, table, mapping: guessCsvMapping(table.rows, test, units) })
      } catch (error) {
        drop(ref)
        throw error
      }
    } catch (error) {
      if (!controller.signal.aborted) setProblem(inWords(error))
    } finally {
      setBusy(undefined)
    }
  }
  const readAs = async (separator: CsvSeparator) => {
    if (!looked) return
    try {
      const table = await api.readingsCsv.read({ ref: looked.ref, separator })
      setLooked({ ...looked, table, mapping: guessCsvMapping(table.rows, test, units) })
    } catch (error) {
      setProblem(inWords(error))
    }
  }

  if (!looked)
    return (
      // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- a place to drop; the button does the same
      <div
        className="row csv-drop"
        role="group"
        aria-label="Readings from a table"
        onDragOver={event => event.preventDefault()}
        onDrop={event => {
          event.preventDefault()
          event.stopPropagation()
          const [file] = event.dataTransfer.files
          if (file && !readOnly) void look(file)
        }}
      >
        <Button isDisabled={readOnly || busy !== undefined} onPress={() => input.current?.click()}>
          {busy ?? 'Readings from a CSV file'}
        </Button>
        {busy !== undefined && <Button onPress={() => stop.current?.abort()}>Cancel</Button>}
        <input
          ref={input}
          type="file"
          hidden
          accept=".csv,.tsv,.txt,text/csv"
          aria-label="CSV file of readings"
          onChange={event => {
            const [file] = event.target.files ?? []
            event.target.value = ''
            if (file) void look(file)
          }}
        />
        {problem !== undefined && (
          <p className="field-error" role="alert">
            {problem}
          </p>
        )}
      </div>
    )

  const { table, mapping } = looked
  const outcome = readCsvRows(table.rows, test, mapping, cylindersOf(job.layout))
  const keep = async () => {
    const at = new Date().toISOString()
    const pulls = outcome.readings.map(
      ({ reading, line }): Pull => ({
        ...reading,
        id: crypto.randomUUID(),
        stage: tray.stage,
        at,
        note: `${table.fileName.slice(0, 200)}, line ${line}`,
      }),
    )
    if (!(await apply({ command: 'add pulls', pulls }))) return
    say(`${pulls.length} readings from ${table.fileName} are in the job.`)
    setLooked(undefined)
  }
  const count = outcome.readings.length
  return (
    <section className="card csv-import" aria-labelledby={headingId}>
      <h3 id={headingId}>
        {testTitle(test)} from {table.fileName}
      </h3>
      <CsvColumns
        table={table}
        test={test}
        mapping={mapping}
        onChange={next => setLooked({ ...looked, mapping: next })}
        onSeparator={separator => void readAs(separator)}
      />
      <CsvRows table={table} outcome={outcome} mapping={mapping} />
      {problem !== undefined && (
        <p className="field-error" role="alert">
          {problem}
        </p>
      )}
      <div className="dialog-buttons">
        <Button onPress={() => setLooked(undefined)}>Leave it</Button>
        <Button kind="main" isDisabled={count === 0 || readOnly} onPress={() => void keep()}>
          Take {count} {count === 1 ? 'reading' : 'readings'} into the job
        </Button>
      </div>
    </section>
  )
}
