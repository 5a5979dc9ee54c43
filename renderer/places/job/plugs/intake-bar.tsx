// Adds photos by picker, folder, drag and drop or paste; shows progress, and afterwards what became of each file.
import { FolderOpen, ImagePlus } from 'lucide-react'
import { useRef } from 'react'
import { Button } from '../../../parts/button.tsx'
import { ProgressStrip } from '../../../parts/progress-strip.tsx'
import type { Intake } from './use-intake.ts'

export function IntakeBar({ intake, readOnly }: { intake: Intake; readOnly: boolean }) {
  const files = useRef<HTMLInputElement>(null)
  const folder = useRef<HTMLInputElement>(null)
  const { busy, outcomes, problem } = intake
  const added = outcomes?.filter(one => one.outcome === 'added').length ?? 0
  const others = outcomes?.filter(one => one.outcome !== 'added') ?? []
  return (
    <div className="intake-bar">
      <Button isDisabled={readOnly || busy !== undefined} onPress={() => files.current?.click()}>
        <ImagePlus aria-hidden="true" /> Add photos
      </Button>
      <Button isDisabled={readOnly || busy !== undefined} onPress={() => folder.current?.click()}>
        <FolderOpen aria-hidden="true" /> Add a folder
      </Button>
      <span className="quiet">or drop or paste them here</span>
      <input
        ref={files}
        type="file"
        multiple
        aria-label="Photo files"
        accept="image/*,.heic,.heif"
        onChange={event => {
          intake.add([...(event.target.files ?? [])])
          event.target.value = ''
        }}
      />
      <input
        ref={node => {
          folder.current = node
          node?.setAttribute('webkitdirectory', '')
        }}
        type="file"
        multiple
        aria-label="Photo folder"
        onChange={event => {
          intake.add([...(event.target.files ?? [])].filter(file => !file.name.startsWith('.')))
          event.target.value = ''
        }}
      />
      {busy && (
        <div className="intake-result">
          <ProgressStrip event={busy.event} what={busy.what} onCancel={busy.cancel} />
        </div>
      )}
      {(outcomes ?? problem) && (
        <div className="intake-result card" role="status">
          <div className="row">
            <strong className="grow">
              {problem ?? `${added} photos added${others.length > 0 ? `, ${others.length} not` : ''}.`}
            </strong>
            <Button onPress={intake.clear}>Close</Button>
          </div>
          {others.length > 0 && (
            <ul>
              {others.map((one, at) => (
                <li key={`${at} ${one.file}`}>
                  <strong>{one.file}</strong>:{' '}
                  {one.outcome === 'duplicate'
                    ? `same photo as ${one.of}, not added again.`
                    : one.outcome === 'refused'
                      ? one.why
                      : ''}
                </li>
              ))}
            </ul>
          )}
        </div>
      )}
    </div>
  )
}
