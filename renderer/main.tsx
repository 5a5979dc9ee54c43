// The page's start: the session first, then the app.
import { createRoot } from 'react-dom/client'
import { startSession } from './api/session.ts'
import { App } from './app.tsx'
import { NoSession } from './no-session.tsx'
import './style/tokens.css'
import './style/base.css'
import './style/state.css'

const place = document.getElementById('root')
if (!place) throw new Error('the page has no root element')
const root = createRoot(place)
const session = await startSession()
root.render(session ? <App session={session} /> : <NoSession />)
