// The list of jobs: search as you type, filters, new job, and what can be done with each.
import { Plus, Search } from 'lucide-react'
import { useDeferredValue, useEffect, useMemo, useRef, useState } from 'react'
import { useLocation } from 'wouter'
import { searchSummaries } from '../../../shared/job/search.ts'
import { useJobs } from '../../api/use-jobs.ts'
import { inWords } from '../../api/client.ts'
import { isTyping } from '../../keys/is-typing.ts'
import { Button } from '../../parts/button.tsx'
import { DemoLoader } from './demo-loader.tsx'
import { JobList } from './job-list.tsx'
import { filters, type FilterName } from './job-filters.ts'
import './jobs-place.css'
import { NewJobDialog } from './new-job-dialog.tsx'

export function JobsPlace() {
  const jobs = useJobs()
  const [text, setText] = useState('')
  const [filter, setFilter] = useState<FilterName>('current')
  const [adding, setAdding] = useState(false)
  const [, go] = useLocation()
  const field = useRef<HTMLInputElement>(null)
  const searched = useDeferredValue(text)
  const shown = useMemo(() => {
    const list = (jobs.data ?? []).filter(filters[filter].keeps)
    return searchSummaries(list, searched).toSorted((a, b) => b.updatedAt.localeCompare(a.updatedAt))
  }, [jobs.data, filter, searched])

  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== '/' || isTyping(event.target)) return
      event.preventDefault()
      field.current?.focus()
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [])

  const empty = jobs.data?.length === 0
  return (
    <main className="jobs-place">
      <header className="jobs-head">
        <h1>Jobs</h1>
        <label className="jobs-search">
          <Search aria-hidden="true" />
          <span className="visually-hidden">Search jobs</span>
          <input
            ref={field}
            type="search"
            value={text}
            placeholder=""
            spellCheck={false}
            aria-keyshortcuts="/"
            onChange={event => setText(event.target.value)}
            onKeyDown={event => {
              if (event.key === 'Escape') {
                setText('')
                event.currentTarget.blur()
              }
              const first = shown[0]
              if (event.key === 'Enter' && first) go(`/job/${first.id}`)
              if (event.key === 'ArrowDown') document.querySelector<HTMLElement>('.job-open')?.focus()
            }}
          />
          <kbd aria-hidden="true">/</kbd>
        </label>
        <div className="jobs-filters" role="group" aria-label="Show">
          {Object.entries(filters).map(([name, { label, keeps }]) => (
            <button
              key={name}
              type="button"
              className="tag-filter"
              aria-pressed={name === filter}
              onClick={() =>
                setFilter(Object.keys(filters).find((one): one is FilterName => one === name) ?? 'current')
              }
            >
              {label} <span className="number">{(jobs.data ?? []).filter(keeps).length}</span>
            </button>
          ))}
        </div>
        <Button kind="main" onPress={() => setAdding(true)}>
          <Plus aria-hidden="true" /> New job
        </Button>
      </header>
      {jobs.error && (
        <p className="card" role="alert">
          The jobs could not be read. {inWords(jobs.error)}
        </p>
      )}
      {empty && (
        <section className="empty">
          <h2>No jobs yet</h2>
          <p>A job is one engine on one visit: its complaint, plugs, readings, repair and proof.</p>
          <div className="row">
            <Button kind="main" onPress={() => setAdding(true)}>
              New job
            </Button>
            <DemoLoader />
          </div>
        </section>
      )}
      {!empty && jobs.data && (
        <>
          <p className="visually-hidden" role="status">
            {shown.length} jobs shown
          </p>
          {shown.length > 0 ? (
            <JobList jobs={shown} />
          ) : (
            <p className="empty">
              No job matches. {text && <Button onPress={() => setText('')}>Clear the search</Button>}
            </p>
          )}
        </>
      )}
      {adding && <NewJobDialog onClose={() => setAdding(false)} onMade={id => go(`/job/${id}`)} />}
    </main>
  )
}
