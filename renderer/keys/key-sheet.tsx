// The sheet of all keys, opened by "?" or from the rail.
import { Keyboard } from 'lucide-react'
import { useEffect, useState } from 'react'
import { Dialog } from '../parts/dialog.tsx'
import { isTyping } from './is-typing.ts'
import { keyCommands } from './keys.ts'
import './key-sheet.css'

export function KeySheet() {
  const [open, setOpen] = useState(false)
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key === '?' && !isTyping(event.target)) setOpen(true)
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [])
  const contexts = [...new Set(keyCommands.map(command => command.context))]
  return (
    <>
      <button type="button" className="rail-link" onClick={() => setOpen(true)}>
        <Keyboard aria-hidden="true" />
        Keys
      </button>
      {open && (
        <Dialog title="Keys" wide onClose={() => setOpen(false)}>
          <div className="key-sheet">
            {contexts.map(context => (
              <section key={context}>
                <h3>{context}</h3>
                <dl>
                  {keyCommands
                    .filter(command => command.context === context)
                    .map(({ keys, does }) => (
                      <div key={keys}>
                        <dt>
                          <kbd>
                            {keys.replace('Mod', navigator.platform.startsWith('Mac') ? '⌘' : 'Ctrl')}
                          </kbd>
                        </dt>
                        <dd>{does}</dd>
                      </div>
                    ))}
                </dl>
              </section>
            ))}
          </div>
        </Dialog>
      )}
    </>
  )
}
