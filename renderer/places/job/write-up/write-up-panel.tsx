// The write-up: what it will say, which photos it shows, the repair, the clipboard text and the PDF for shop or customer.
import { useMutation } from '@tanstack/react-query'
import { ClipboardCopy, FileDown } from 'lucide-react'
import { useMemo, useState } from 'react'
import { writeUp } from '../../../../shared/writeup/findings.ts'
import { repairOrderText } from '../../../../shared/writeup/repair-order-text.ts'
import type { Audience } from '../../../../shared/writeup/write-up.ts'
import { inWords } from '../../../api/client.ts'
import { useHost } from '../../../api/host-context.ts'
import { useSettings, useUnits } from '../../../api/use-settings.ts'
import { Button } from '../../../parts/button.tsx'
import { useNotices } from '../../../parts/notices.tsx'
import { StateWord } from '../../../parts/state-glyph.tsx'
import { useJobPage } from '../job-context.ts'
import { PhotoChoice } from './photo-choice.tsx'
import { Refitting } from './refitting.tsx'
import { RepairFields } from './repair-fields.tsx'
import './write-up-panel.css'

export function WriteUpPanel() {
  const { job } = useJobPage()
  const { api, exported } = useHost()
  const { say, fail } = useNotices()
  const units = useUnits()
  const shop = useSettings()?.shop ?? ''
  const [audience, setAudience] = useState<Audience>('shop')
  const report = useMemo(() => writeUp(job, units, audience, shop), [job, units, audience, shop])
  const pdf = useMutation({
    mutationFn: async () => {
      const made = await api.writeUp.pdf({ jobId: job.id, audience })
      download(await exported(made.exportId), made.fileName)
      return made
    },
    onSuccess: made => say(`${made.fileName} is in your downloads.`),
    onError: error => fail(`The PDF was not made. ${inWords(error)}`),
  })
  const copy = () =>
    navigator.clipboard.writeText(repairOrderText(writeUp(job, units, 'shop', shop))).then(
      () => say('The repair-order text is on the clipboard.'),
      () => fail('The browser did not let the text onto the clipboard. Mark it below and copy it.'),
    )

  return (
    <div className="write-up-panel">
      <div className="row">
        <div className="row" role="group" aria-label="For whom">
          {(['shop', 'customer'] as const).map(one => (
            <button
              key={one}
              type="button"
              className="tag-filter"
              aria-pressed={audience === one}
              onClick={() => setAudience(one)}
            >
              For the {one}
            </button>
          ))}
        </div>
        <span className="grow" />
        <Button onPress={() => void copy()}>
          <ClipboardCopy aria-hidden="true" /> Copy repair-order text
        </Button>
        <Button kind="main" isDisabled={pdf.isPending} onPress={() => pdf.mutate()}>
          <FileDown aria-hidden="true" /> {pdf.isPending ? 'Drawing …' : 'Save PDF'}
        </Button>
      </div>
      <RepairFields audience={audience} />
      <Refitting />
      <PhotoChoice />
      <article className="card write-up-preview" aria-label="Preview">
        <h2>{report.title}</h2>
        {report.invented && <p className="quiet">Invented demonstration job with rendered pictures.</p>}
        <p>{report.complaint}</p>
        {report.summary.map(line => (
          <p key={line}>
            <strong>{line}</strong>
          </p>
        ))}
        {report.engine.map(line => (
          <p key={line}>{line}</p>
        ))}
        {report.findings.map(finding => (
          <section key={finding.cylinder}>
            <h3>
              Cylinder {finding.cylinder} <StateWord state={finding.state} />
            </h3>
            <ul>
              {finding.lines.map(line => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </section>
        ))}
        {report.repair.length > 0 && <h3>Work done</h3>}
        {[...report.repair, ...report.proof].map(line => (
          <p key={line}>{line}</p>
        ))}
        {report.notTested.length > 0 && <p>Not tested: {report.notTested.join(', ')}.</p>}
      </article>
      <details>
        <summary>Repair-order text</summary>
        <pre className="repair-order-text">{repairOrderText(report)}</pre>
      </details>
    </div>
  )
}

function download(file: Blob, name: string): void {
  const url = URL.createObjectURL(file)
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  window.setTimeout(() => URL.revokeObjectURL(url), 10_000)
}
