// The rows of the job list; only those in sight are in the document, so two thousand are no burden.
import { useVirtualizer } from '@tanstack/react-virtual'
import { type KeyboardEvent, useRef } from 'react'
import type { JobSummary } from '../../../shared/contract/summary-schema.ts'
import { JobRow } from './job-row.tsx'

const rowHeight = 92

type JobListProps = {
  jobs: readonly JobSummary[]
  /** Pixels scrolled, kept while another place is shown. */
  scrolled: number
  onScroll: (pixels: number) => void
  /** Arrow up on the first row. */
  onLeaveUp: () => void
}

export function JobList({ jobs, scrolled, onScroll, onLeaveUp }: JobListProps) {
  const scroller = useRef<HTMLDivElement>(null)
  const rows = useVirtualizer({
    count: jobs.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => rowHeight,
    getItemKey: index => jobs[index]?.id ?? index,
    initialOffset: scrolled,
    overscan: 6,
  })
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    if (!(event.target instanceof HTMLElement) || !event.target.matches('.job-open')) return
    const at = Number(event.target.dataset.index)
    const page = Math.max(1, Math.floor((scroller.current?.clientHeight ?? rowHeight) / rowHeight) - 1)
    const next = {
      ArrowDown: at + 1,
      ArrowUp: at - 1,
      PageDown: Math.min(jobs.length - 1, at + page),
      PageUp: Math.max(0, at - page),
      Home: 0,
      End: jobs.length - 1,
    }[event.key]
    if (next === undefined) return
    event.preventDefault()
    if (next < 0) onLeaveUp()
    if (next < 0 || next >= jobs.length) return
    rows.scrollToIndex(next)
    focusRow(next)
  }
  /** A row far away is drawn a frame or two after the scroll. */
  const focusRow = (index: number, tries = 10) => {
    const row = scroller.current?.querySelector<HTMLElement>(`.job-open[data-index="${index}"]`)
    if (row) row.focus({ preventScroll: true })
    else if (tries > 0) requestAnimationFrame(() => focusRow(index, tries - 1))
  }
  return (
    <div className="job-list" ref={scroller} onScroll={event => onScroll(event.currentTarget.scrollTop)}>
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- arrows move between the links inside */}
      <div
        className="job-rows"
        style={{ height: rows.getTotalSize() }}
        role="list"
        aria-label="Jobs"
        onKeyDown={onKeyDown}
      >
        {rows.getVirtualItems().map(({ index, start, key }) => {
          const job = jobs[index]
          return job ? <JobRow key={key} job={job} index={index} top={start} height={rowHeight} /> : null
        })}
      </div>
    </div>
  )
}
