// One job on one page: the deck on the left with what the engine says as a whole, the work on the right.
import { Link } from 'wouter'
import { inWords } from '../../api/client.ts'
import { useJobState } from '../../api/use-jobs.ts'
import { usePageTitle } from '../../parts/use-page-title.ts'
import { CausesPanel } from './causes/causes-panel.tsx'
import { DeckSide } from './deck-side.tsx'
import { GaugesPanel } from './gauges/gauges-panel.tsx'
import { JobHead } from './job-head.tsx'
import { JobPageContext } from './job-context.ts'
import './job-place.css'
import { PlugsPanel } from './plugs/plugs-panel.tsx'
import { TabNote } from './tab-note.tsx'
import { useJobPageState } from './use-job-page-state.ts'
import { WriteUpPanel } from './write-up/write-up-panel.tsx'
import type { JobState } from '../../../shared/contract/contract.ts'

const tabs = [
  { name: 'plugs', label: 'Plugs', panel: PlugsPanel },
  { name: 'gauges', label: 'Gauges', panel: GaugesPanel },
  { name: 'causes', label: 'Causes', panel: CausesPanel },
  { name: 'write-up', label: 'Write-up', panel: WriteUpPanel },
] as const

export function JobPlace({ id, tab }: { id: string; tab: string }) {
  const { data, error } = useJobState(id)
  if (error)
    return (
      <main className="problem-page">
        <h1>This job cannot be opened</h1>
        <p role="alert">{inWords(error)}</p>
        <Link href="/jobs">Back to the jobs</Link>
      </main>
    )
  return data ? <OpenJob state={data} tab={tab} /> : <main aria-busy="true" />
}

function OpenJob({ state, tab }: { state: JobState; tab: string }) {
  const page = useJobPageState(state.job)
  usePageTitle(state.job.engine.vehicle || 'Job')
  const shown = tabs.find(one => one.name === tab) ?? tabs[0]
  const Panel = shown.panel
  return (
    <JobPageContext value={page}>
      <main className="job-place">
        <JobHead state={state} />
        <DeckSide />
        <section className="job-work" aria-label={shown.label}>
          <nav className="job-tabs" aria-label="Work">
            {tabs.map(({ name, label }, at) => (
              <Link
                key={name}
                href={`/job/${state.job.id}/${name}`}
                className="job-tab"
                aria-current={name === shown.name ? 'page' : undefined}
                aria-keyshortcuts={`Alt+${at + 1}`}
              >
                {label} <TabNote job={state.job} tab={name} />
              </Link>
            ))}
          </nav>
          <Panel />
        </section>
      </main>
    </JobPageContext>
  )
}
