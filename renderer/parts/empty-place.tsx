// A place with nothing in it yet: what belongs here in one sentence, and how to begin.
import type { ReactNode } from 'react'
import './empty-place.css'

type EmptyPlaceProps = { title: string; text: string; children: ReactNode }

export function EmptyPlace({ title, text, children }: EmptyPlaceProps) {
  return (
    <section className="empty-place">
      <EmptyTray />
      <h2>{title}</h2>
      <p>{text}</p>
      <div className="row">{children}</div>
    </section>
  )
}

/** A tray with four empty slots, drawn as "unknown". */
const EmptyTray = () => (
  <svg viewBox="0 0 176 52" width="176" height="52" aria-hidden="true">
    <rect x="1" y="1" width="174" height="50" rx="8" />
    {[26, 67, 108, 149].map(x => (
      <circle key={x} cx={x} cy="26" r="14" />
    ))}
  </svg>
)
