// All readings of the job as a CSV file, for a spreadsheet.
import { readingsCsv } from '../../../../../shared/gauges/readings-csv-out.ts'
import { Button } from '../../../../parts/button.tsx'
import { useNotices } from '../../../../parts/notices.tsx'
import { useJobPage } from '../../job-context.ts'

export function ReadingsCsv() {
  const { job } = useJobPage()
  const { say } = useNotices()
  if (job.pulls.length === 0) return null
  const save = () => {
    const name = `readings-${job.createdAt.slice(0, 10)}-${job.id.slice(0, 8)}.csv`
    // The mark at the beginning tells a spreadsheet that the text is UTF-8.
    const url = URL.createObjectURL(
      new Blob(['\ufeff', readingsCsv(job)], { type: 'text/csv;charset=utf-8' }),
    )
    const link = document.createElement('a')
    link.href = url
    link.download = name
    link.click()
    window.setTimeout(() => URL.revokeObjectURL(url), 10_000)
    say(`${name} is in your downloads.`)
  }
  return (
    <div className="row">
      <Button onPress={save}>Save all readings as CSV</Button>
    </div>
  )
}
