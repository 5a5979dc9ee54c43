// One line of the job list: photos, vehicle and complaint, the engine in small with its states, and the date.
import { Link } from 'wouter'
import type { JobSummary } from '../../../shared/contract/summary-schema.ts'
import { useOwnLayouts } from '../../api/use-settings.ts'
import { ContextMenu } from '../../parts/context-menu.tsx'
import { MiniDeck } from '../../parts/deck/mini-deck.tsx'
import { MenuButton } from '../../parts/menu.tsx'
import { Thumb } from '../../parts/photo/thumb.tsx'
import { StateGlyph, StateWord } from '../../parts/state-glyph.tsx'
import { layoutOfSummary } from './layout-of-summary.ts'
import { statesInShort } from './summary-states.ts'
import { useJobCommands } from './use-job-commands.ts'

type JobRowProps = { job: JobSummary; index: number; top: number; height: number }

export function JobRow({ job, index, top, height }: JobRowProps) {
  const name = job.vehicle || 'Engine without a name'
  const commands = useJobCommands(job, name)
  const marks = [job.demo && 'demo, invented', job.repaired && 'repaired', job.archived && 'archived']
  return (
    <ContextMenu label={name} commands={commands}>
      {onContextMenu => (
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- the menu button opens the same menu
        <div
          className="job-row"
          role="listitem"
          style={{ transform: `translateY(${top}px)`, height }}
          onContextMenu={onContextMenu}
        >
          <Link href={`/job/${job.id}`} className="job-open" data-index={index}>
            <span className="job-photos">
              {job.photos.slice(0, 3).map(photo => (
                <Thumb key={photo} photo={photo} alt="" />
              ))}
              {job.photos.length === 0 && <span className="job-no-photo">no photo</span>}
            </span>
            <span className="job-words">
              <strong>{name}</strong>
              <span className={job.complaint ? 'job-complaint' : 'job-complaint quiet'}>
                {job.complaint || 'No complaint yet'}
              </span>
              <span className="quiet">
                {[job.layoutName, job.technician, ...marks].filter(Boolean).join(' \u00b7 ')}
              </span>
            </span>
            <JobStates job={job} />
            <time className="job-date" dateTime={job.createdAt}>
              {dateOf(job.createdAt)}
            </time>
          </Link>
          <MenuButton label={`Commands for ${name}`} commands={commands} />
        </div>
      )}
    </ContextMenu>
  )
}

const dateOf = (time: string): string =>
  new Date(time).toLocaleDateString(undefined, { year: 'numeric', month: 'short', day: 'numeric' })

function JobStates({ job }: { job: JobSummary }) {
  const layout = layoutOfSummary(job, useOwnLayouts())
  const { worst, cylinders, unknown } = statesInShort(job.states)
  const spoken = job.states.map(one => `cylinder ${one.cylinder} ${one.state}`).join(', ')
  return (
    <>
      <span className="job-deck" role="img" aria-label={spoken}>
        {layout ? (
          <MiniDeck layout={layout} states={new Map(job.states.map(one => [one.cylinder, one.state]))} />
        ) : (
          <span className="job-glyphs">
            {job.states.map(one => (
              <StateGlyph key={one.cylinder} state={one.state} />
            ))}
          </span>
        )}
      </span>
      <span className="job-short">
        <StateWord state={worst} />
        <span>
          {cylinders.length > 0 && `cyl ${cylinders.join(', ')}`}
          {unknown > 0 && <span className="quiet"> {unknown} unknown</span>}
        </span>
      </span>
    </>
  )
}
