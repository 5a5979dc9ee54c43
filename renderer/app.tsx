// The window: a narrow rail, and the place it leads to.
import { QueryClient, QueryClientProvider } from '@tanstack/react-query'
import { ClipboardList, EyeOff, SlidersHorizontal, Unplug } from 'lucide-react'
import { useEffect, useState } from 'react'
import { Link, Redirect, Route, Router, Switch, useLocation } from 'wouter'
import { useHashLocation } from 'wouter/use-hash-location'
import { connect } from './api/client.ts'
import { HostContext } from './api/host-context.ts'
import type { Session } from './api/session.ts'
import { useChanges } from './api/use-changes.ts'
import { useSettings, useStatus } from './api/use-settings.ts'
import './app.css'
import { KeySheet } from './keys/key-sheet.tsx'
import { useKeys } from './keys/use-keys.ts'
import { Mark } from './parts/mark.tsx'
import { NoticeProvider } from './parts/notices.tsx'
import { JobPlace } from './places/job/job-place.tsx'
import { JobsPlace } from './places/jobs/jobs-place.tsx'
import { SetupPlace } from './places/setup/setup-place.tsx'

export function App({ session }: { session: Session }) {
  const [host] = useState(() => connect(session))
  const [cache] = useState(
    () =>
      new QueryClient({ defaultOptions: { queries: { staleTime: 60_000, refetchOnWindowFocus: false } } }),
  )
  return (
    <HostContext value={host}>
      <QueryClientProvider client={cache}>
        {/* oxlint-disable-next-line react/hooks -- the router takes its location hook as a value */}
        <Router hook={useHashLocation}>
          <NoticeProvider>
            <Shell />
          </NoticeProvider>
        </Router>
      </QueryClientProvider>
    </HostContext>
  )
}

const places = [
  { path: '/jobs', label: 'Jobs', icon: ClipboardList },
  { path: '/setup', label: 'Setup', icon: SlidersHorizontal },
] as const

function Shell() {
  const connection = useChanges()
  const status = useStatus()
  const theme = useSettings()?.theme ?? 'system'
  const [at, go] = useLocation()
  useKeys('everywhere', { jobs: () => go('/jobs'), setup: () => go('/setup') })
  useEffect(() => {
    if (theme === 'system') delete document.documentElement.dataset.theme
    else document.documentElement.dataset.theme = theme
  }, [theme])
  return (
    <div className="shell">
      <nav className="rail" aria-label="Places">
        <Mark />
        {places.map(({ path, label, icon: Icon }) => (
          <Link
            key={path}
            href={path}
            className="rail-link"
            aria-current={isUnder(at, path) ? 'page' : undefined}
          >
            <Icon aria-hidden="true" />
            {label}
          </Link>
        ))}
        <span className="grow" />
        <KeySheet />
      </nav>
      <div className="place">
        {connection === 'lost' && (
          <p className="banner" role="alert">
            <Unplug aria-hidden="true" />
            Plugtray does not answer. Is it still running? What was saved is safe; this page goes on by itself
            once it is back.
          </p>
        )}
        {connection === 'stranger' && (
          <p className="banner" role="alert">
            <Unplug aria-hidden="true" />
            Plugtray was started anew and does not know this page. Open the newest link that it printed; what
            was saved is safe.
          </p>
        )}
        {status?.readOnly && (
          <p className="banner" role="status">
            <EyeOff aria-hidden="true" />
            Only reading: {status.readOnly}
          </p>
        )}
        <Switch>
          <Route path="/jobs" component={JobsPlace} />
          <Route path="/job/:id/:tab?">
            {({ id, tab }) => <JobPlace key={id} id={id} tab={tab ?? 'plugs'} />}
          </Route>
          <Route path="/setup" component={SetupPlace} />
          <Route>
            <Redirect to="/jobs" replace />
          </Route>
        </Switch>
      </div>
    </div>
  )
}

/** A job belongs to the Jobs place. */
const isUnder = (at: string, path: string): boolean =>
  at.startsWith(path) || (path === '/jobs' && at.startsWith('/job/'))
