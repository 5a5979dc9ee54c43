// Listens for the commands of one context while a place is shown. While somebody types only chords that no field needs
// act; while a dialog is open nothing does.
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
      if (event.defaultPrevented || document.querySelector('[role="dialog"]')) return
      const pressed = pressedKeys(event)
      const command = table.find(one => one.context === context && one.keys === pressed)
      if (isTyping(event.target) && !command?.whileTyping) return
      const run = Object.entries(newest.current).find(([id]) => id === command?.id)?.[1]
      if (!run) return
      event.preventDefault()
      run()
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [context])
}
