// The sheet of all keys, opened by "?" or from the rail.
import { Keyboard } from 'lucide-react'
import { useState } from 'react'
import { Dialog } from '../parts/dialog.tsx'
import { type KeyCommand, keyCommands } from './keys.ts'
import './key-sheet.css'
import { useKeys } from './use-keys.ts'

const commands: readonly KeyCommand[] = keyCommands

export function KeySheet() {
  const [open, setOpen] = useState(false)
  useKeys('everywhere', { keys: () => setOpen(true) })
  const contexts = [...new Set(commands.map(command => command.context))]
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
                  {commands
                    .filter(command => command.context === context)
                    .map(({ keys, does }) => (
                      <div key={keys}>
                        <dt>
                          <Keys keys={keys} />
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

const isMac = navigator.platform.startsWith('Mac')

const Keys = ({ keys }: { keys: string }) => (
  <>
    {keys.split(/(?<=.)\+/).map(key => (
      <kbd key={key}>{key === 'Mod' ? (isMac ? '⌘' : 'Ctrl') : key}</kbd>
    ))}
  </>
)
