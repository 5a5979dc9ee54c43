// Names the window after what it shows, for the task bar and for screen readers.
import { useEffect } from 'react'

export function usePageTitle(title: string): void {
  useEffect(() => {
    document.title = `${title} \u2013 Plugtray`
  }, [title])
}
