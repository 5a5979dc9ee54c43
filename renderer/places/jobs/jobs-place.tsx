// The list of jobs: search as you type, filters, new job, and what can be done with each.
import { Plus } from 'lucide-react'
import { useMemo, useRef, useState } from 'react'
import { useLocation } from 'wouter'
import type { JobSummary } from '../../../shared/contract/summary-schema.ts'
import { searchSummaries } from '../../../shared/job/search.ts'
import { inWords } from '../../api/client.ts'
import { useJobs } from '../../api/use-jobs.ts'
import { useStatus } from '../../api/use-settings.ts'
import { useKeys } from '../../keys/use-keys.ts'
import { Button } from '../../parts/button.tsx'
import { usePageTitle } from '../../parts/use-page-title.ts'
import { Segmented } from '../../parts/segmented.tsx'
import { filterNames, filters, type FilterName } from './job-filters.ts'
import { JobList } from './job-list.tsx'
import { JobSearch } from './job-search.tsx'
import './jobs-place.css'
import { NewJobDialog } from './new-job-dialog.tsx'
import { NoJobs } from './no-jobs.tsx'

type Remembered = { text: string; filter: FilterName; scrolled: number }
/** What the list looked like when it was left: coming back from a job finds it so. */
const remembered: Remembered = { text: '', filter: 'current', scrolled: 0 }

const newestFirst = (jobs: readonly JobSummary[]): JobSummary[] =>
  jobs
    .map(job => ({ job, at: Date.parse(job.createdAt) }))
    .toSorted((a, b) => b.at - a.at)
    .map(({ job }) => job)

export function JobsPlace() {
  const jobs = useJobs()
  const readOnly = useStatus()?.readOnly != null
  const [text, setText] = useState(remembered.text)
  const [filter, setFilter] = useState<FilterName>(remembered.filter)
  const [adding, setAdding] = useState(false)
  const [, go] = useLocation()
  const field = useRef<HTMLInputElement>(null)
  const all = jobs.data
  const sorted = useMemo(() => newestFirst(all ?? []), [all])
  const shown = useMemo(
    () => searchSummaries(sorted.filter(filters[filter].keeps), text),
    [sorted, filter, text],
  )
  usePageTitle('Jobs')
  useKeys('job list', { search: () => field.current?.focus() })

  const search = (next: string) => {
    setText(next)
    Object.assign(remembered, { text: next, scrolled: 0 })
  }
  const narrow = (next: FilterName) => {
    setFilter(next)
    Object.assign(remembered, { filter: next, scrolled: 0 })
  }
  const firstRow = () => document.querySelector<HTMLElement>('.job-open')
  return (
    <main className="jobs-place">
      <header className="jobs-head">
        <h1>Jobs</h1>
        <JobSearch
          field={field}
          text={text}
          onText={search}
          onOpen={() => {
            const first = shown[0]
            if (first) go(`/job/${first.id}`)
          }}
          onDown={() => firstRow()?.focus()}
        />
        <Button kind="main" isDisabled={readOnly} onPress={() => setAdding(true)}>
          <Plus aria-hidden="true" /> New job
        </Button>
      </header>
      {jobs.error && (
        <p className="card" role="alert">
          The jobs could not be read. {inWords(jobs.error)}
        </p>
      )}
      {all?.length === 0 && <NoJobs readOnly={readOnly} onNew={() => setAdding(true)} />}
      {all && all.length > 0 && (
        <>
          <div className="jobs-filters">
            <Segmented
              label="Show"
              value={filter}
              onChange={narrow}
              options={filterNames.map(name => ({
                value: name,
                text: (
                  <>
                    {filters[name].label} <small>{all.filter(filters[name].keeps).length}</small>
                  </>
                ),
              }))}
            />
            <p className="quiet" role="status">
              {text.trim() === ''
                ? `${shown.length} shown, newest first`
                : `${shown.length} of ${all.filter(filters[filter].keeps).length} match`}
            </p>
          </div>
          {shown.length > 0 ? (
            <JobList
              jobs={shown}
              scrolled={remembered.scrolled}
              onScroll={scrolled => Object.assign(remembered, { scrolled })}
              onLeaveUp={() => field.current?.focus()}
            />
          ) : (
            <div className="empty">
              <p>No job matches.</p>
              {text !== '' && <Button onPress={() => search('')}>Clear the search</Button>}
            </div>
          )}
        </>
      )}
      {adding && <NewJobDialog onClose={() => setAdding(false)} onMade={id => go(`/job/${id}`)} />}
    </main>
  )
}
