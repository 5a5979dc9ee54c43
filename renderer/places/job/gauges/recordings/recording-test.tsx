// A test made from a recording: how to take it, the file dropped here, its columns, the marked picture, keep or discard.
import { FileChartLine } from 'lucide-react'
import { type DragEvent, useId, useRef, useState } from 'react'
import type { RecordingTestKind } from '../../../../../shared/contract/recordings-contract.ts'
import { recordingGuides } from '../../../../../shared/recordings/recording-guide.ts'
import { Button } from '../../../../parts/button.tsx'
import { ProgressStrip } from '../../../../parts/progress-strip.tsx'
import { useJobPage } from '../../job-context.ts'
import { ColumnsForm } from './columns-form.tsx'
import { KeptRecordings } from './kept-recordings.tsx'
import { RecordingResult } from './recording-result.tsx'
import './recordings.css'
import { useRecording } from './use-recording.ts'

export function RecordingTest({ test }: { test: RecordingTestKind }) {
  const { readOnly } = useJobPage()
  const guide = recordingGuides[test]
  const work = useRecording(test)
  const { stage } = work
  return (
    <div className="recording-test">
      <section className="caution" aria-label={`Caution: ${guide.title}`}>
        <strong>Caution</strong>
        <ul>
          {guide.cautions.map(text => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </section>
      <details>
        <summary>How to record</summary>
        <ol>
          {guide.steps.map(text => (
            <li key={text}>{text}</li>
          ))}
        </ol>
      </details>
      {stage.at === 'nothing' && !readOnly && <FileDrop onFile={work.add} columns={guide.columns} />}
      {work.problem !== undefined && (
        <p className="field-error" role="alert">
          {work.problem}
        </p>
      )}
      {stage.at === 'sending' && (
        <ProgressStrip event={undefined} what={`Handing over ${stage.name}`} onCancel={work.cancel} />
      )}
      {stage.at === 'columns' && (
        <ColumnsForm
          preview={stage.preview}
          mapping={stage.mapping}
          test={test}
          onChange={work.setMapping}
          onReadAs={work.readAs}
          onEvaluate={work.evaluate}
          onDiscard={work.discard}
        />
      )}
      {stage.at === 'evaluating' && (
        <ProgressStrip
          event={work.event}
          what={`Evaluating ${stage.preview.fileName}`}
          onCancel={work.cancel}
        />
      )}
      {stage.at === 'result' && (
        <section className="card" aria-label={`Result of ${stage.preview.fileName}`}>
          <RecordingResult analysis={stage.analysis} test={test} />
          <div className="row recording-buttons">
            <Button onPress={work.discard} isDisabled={stage.keeping}>
              Discard
            </Button>
            <Button onPress={work.back} isDisabled={stage.keeping || stage.stored}>
              Change the columns
            </Button>
            {stage.analysis.entry && (
              <Button kind="main" onPress={work.keep} isDisabled={stage.keeping || readOnly}>
                Keep as a pull
              </Button>
            )}
          </div>
        </section>
      )}
      <KeptRecordings test={test} />
    </div>
  )
}

function FileDrop({ onFile, columns }: { onFile: (file: File) => void; columns: string }) {
  const picker = useRef<HTMLInputElement>(null)
  const [over, setOver] = useState(false)
  const hint = useId()
  const hold = (event: DragEvent) => {
    event.preventDefault()
    event.stopPropagation()
    setOver(event.type !== 'dragleave')
  }
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- the button does the same by keyboard
    <div
      className="recording-drop"
      role="group"
      aria-label="Recording file"
      data-over={over}
      onDragOver={hold}
      onDragLeave={hold}
      onDrop={event => {
        hold(event)
        setOver(false)
        const [file] = event.dataTransfer.files
        if (file) onFile(file)
      }}
    >
      <Button onPress={() => picker.current?.click()} aria-describedby={hint}>
        <FileChartLine aria-hidden="true" /> Choose a recording
      </Button>
      <span className="quiet" id={hint}>
        or drop it here: CSV with {columns}
      </span>
      <input
        ref={picker}
        type="file"
        hidden
        aria-label="Recording as CSV"
        accept=".csv,.tsv,.txt,.asc,.dat,text/csv,text/plain"
        onChange={event => {
          const [file] = event.target.files ?? []
          event.target.value = ''
          if (file) onFile(file)
        }}
      />
    </div>
  )
}
