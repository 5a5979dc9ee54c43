// Short notices at the foot of the window: what happened, and Undo where that is possible. Failures stay until closed.
import { X } from 'lucide-react'
import { createContext, type ReactNode, useCallback, useContext, useMemo, useState } from 'react'
import { Button } from './button.tsx'
import { IconButton } from './icon-button.tsx'
import './notices.css'

type Notice = { id: number; text: string; failure: boolean; undo: (() => void) | undefined }
type Notices = {
  say: (text: string, undo?: () => void) => void
  fail: (text: string) => void
}

const NoticeContext = createContext<Notices | null>(null)

export function useNotices(): Notices {
  const notices = useContext(NoticeContext)
  if (!notices) throw new Error('useNotices outside its provider')
  return notices
}

const shownMs = 12_000
let lastId = 0

export function NoticeProvider({ children }: { children: ReactNode }) {
  const [shown, setShown] = useState<Notice[]>([])
  const close = useCallback((id: number) => setShown(now => now.filter(one => one.id !== id)), [])
  const notices = useMemo<Notices>(() => {
    const add = (notice: Omit<Notice, 'id'>) => {
      lastId += 1
      const id = lastId
      setShown(now => [...now.slice(-3), { ...notice, id }])
      if (!notice.failure) window.setTimeout(() => close(id), shownMs)
    }
    return {
      say: (text, undo) => add({ text, failure: false, undo }),
      fail: text => add({ text, failure: true, undo: undefined }),
    }
  }, [close])
  return (
    <NoticeContext value={notices}>
      {children}
      <section className="notices" aria-label="Notices">
        {shown.map(({ id, text, failure, undo }) => (
          <div key={id} className="notice" role={failure ? 'alert' : 'status'}>
            <p>{text}</p>
            {undo && (
              <Button
                onPress={() => {
                  undo()
                  close(id)
                }}
              >
                Undo
              </Button>
            )}
            <IconButton label="Close this notice" onPress={() => close(id)}>
              <X />
            </IconButton>
          </div>
        ))}
      </section>
    </NoticeContext>
  )
}
