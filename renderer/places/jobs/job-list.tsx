// The rows of the job list; only those in sight are in the document, so two thousand are no burden.
import { useVirtualizer } from '@tanstack/react-virtual'
import { Archive, ArchiveRestore, Copy, Trash2 } from 'lucide-react'
import { type KeyboardEvent, useRef } from 'react'
import { Link, useLocation } from 'wouter'
import type { JobSummary } from '../../../shared/contract/summary-schema.ts'
import { inWords } from '../../api/client.ts'
import { useJobActions } from '../../api/use-jobs.ts'
import { useStatus } from '../../api/use-settings.ts'
import { IconButton } from '../../parts/icon-button.tsx'
import { useNotices } from '../../parts/notices.tsx'
import { Thumb } from '../../parts/photo/thumb.tsx'
import { StateGlyph } from '../../parts/state-glyph.tsx'

const rowHeight = 92

export function JobList({ jobs }: { jobs: readonly JobSummary[] }) {
  const scroller = useRef<HTMLDivElement>(null)
  const rows = useVirtualizer({
    count: jobs.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => rowHeight,
    overscan: 6,
  })
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key]
    if (step === undefined || !(event.target instanceof HTMLElement) || !event.target.matches('.job-open'))
      return
    event.preventDefault()
    const next = Number(event.target.dataset.index) + step
    if (next < 0 || next >= jobs.length) return
    rows.scrollToIndex(next)
    requestAnimationFrame(() =>
      scroller.current?.querySelector<HTMLElement>(`.job-open[data-index="${next}"]`)?.focus(),
    )
  }
  return (
    <div className="job-list" ref={scroller}>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- arrows move between the links inside */}
      <div
        className="job-rows"
        style={{ height: rows.getTotalSize() }}
        role="list"
        aria-label="Jobs"
        onKeyDown={onKeyDown}
      >
        {rows.getVirtualItems().map(({ index, start }) => {
          const job = jobs[index]
          return job ? <JobRow key={job.id} job={job} index={index} top={start} /> : null
        })}
      </div>
    </div>
  )
}

function JobRow({ job, index, top }: { job: JobSummary; index: number; top: number }) {
  const { duplicate, remove, restore, archive } = useJobActions()
  const { say, fail } = useNotices()
  const [, go] = useLocation()
  const readOnly = useStatus()?.readOnly != null
  const failed = (error: unknown) => fail(inWords(error))
  const name = job.vehicle || 'Engine without a name'
  return (
    <div className="job-row" role="listitem" style={{ transform: `translateY(${top}px)`, height: rowHeight }}>
      <Link href={`/job/${job.id}`} className="job-open" data-index={index}>
        <span className="job-photos">
          {job.photos.slice(0, 2).map(photo => (
            <Thumb key={photo} photo={photo} alt="" />
          ))}
        </span>
        <span className="job-words">
          <strong>{name}</strong>
          <span className="job-complaint">{job.complaint || 'No complaint yet'}</span>
          <span className="quiet">
            {job.createdAt.slice(0, 10)} · {job.layoutName}
            {job.demo && ' · invented demo'}
            {job.repaired && ' · repaired'}
            {job.archived && ' · archived'}
          </span>
        </span>
        <span
          className="job-states"
          role="img"
          aria-label={job.states.map(one => `cylinder ${one.cylinder} ${one.state}`).join(', ')}
        >
          {job.states.map(one => (
            <span key={one.cylinder} className="job-state" data-state={one.state}>
              <span className="number">{one.cylinder}</span>
              <StateGlyph state={one.state} />
            </span>
          ))}
        </span>
      </Link>
      <span className="job-actions">
        <IconButton
          label={`New visit of ${name}`}
          isDisabled={readOnly}
          onPress={() =>
            duplicate.mutate(job.id, { onSuccess: state => go(`/job/${state.job.id}`), onError: failed })
          }
        >
          <Copy />
        </IconButton>
        <IconButton
          label={job.archived ? `Take ${name} out of the archive` : `Archive ${name}`}
          isDisabled={readOnly}
          onPress={() =>
            archive.mutate(
              { id: job.id, archived: !job.archived },
              {
                onSuccess: () =>
                  say(job.archived ? `${name} is open again.` : `${name} is archived.`, () =>
                    archive.mutate({ id: job.id, archived: job.archived }, { onError: failed }),
                  ),
                onError: failed,
              },
            )
          }
        >
          {job.archived ? <ArchiveRestore /> : <Archive />}
        </IconButton>
        <IconButton
          label={`Delete ${name}`}
          isDisabled={readOnly}
          onPress={() =>
            remove.mutate(job.id, {
              onSuccess: () => say(`${name} is deleted.`, () => restore.mutate(job.id, { onError: failed })),
              onError: failed,
            })
          }
        >
          <Trash2 />
        </IconButton>
      </span>
    </div>
  )
}
