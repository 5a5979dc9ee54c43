// Listens for the commands of one context while a place is shown. Nothing acts while somebody types or a dialog is open.
import { useEffect, useRef } from 'react'
import { isTyping } from './is-typing.ts'
import { type KeyCommand, type KeyCommandId, type KeyContext, keyCommands } from './keys.ts'
import { pressedKeys } from './pressed-keys.ts'

type Handlers = Partial<Record<KeyCommandId, () => void>>

export function useKeys(context: KeyContext, handlers: Handlers): void {
  const newest = useRef(handlers)
  useEffect(() => {
    newest.current = handlers
  })
  useEffect(() => {
    const table: readonly KeyCommand[] = keyCommands
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented || isTyping(event.target) || document.querySelector('[role="dialog"]'))
        return
      const pressed = pressedKeys(event)
      const command = table.find(one => one.context === context && one.keys === pressed)
      const run = Object.entries(newest.current).find(([id]) => id === command?.id)?.[1]
      if (!run) return
      event.preventDefault()
      run()
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [context])
}
