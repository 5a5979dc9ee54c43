// The app's mark: a plug seen end-on in the hexagon of its wrench, strap across the middle.
export function Mark() {
  return (
    <svg className="mark" viewBox="0 0 32 32" width="32" height="32" aria-hidden="true">
      <path
        d="M16 2.5 27.7 9.25v13.5L16 29.5 4.3 22.75V9.25Z"
        fill="none"
        stroke="currentColor"
        strokeWidth="2"
        strokeLinejoin="round"
      />
      <circle cx="16" cy="16" r="7.5" fill="none" stroke="currentColor" strokeWidth="2" />
      <circle cx="16" cy="16" r="2.6" fill="currentColor" />
      <path d="M16 16V7" stroke="currentColor" strokeWidth="4" />
    </svg>
  )
}
