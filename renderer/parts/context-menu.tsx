// Right-click on a thing opens the commands for it, where the pointer is. The same commands are behind its menu button.
import { type MouseEvent, type ReactNode, useRef, useState } from 'react'
import { Popover } from 'react-aria-components'
import { type MenuCommand, MenuItems } from './menu.tsx'

type ContextMenuProps = {
  label: string
  commands: readonly MenuCommand[]
  /** The thing, given what it must listen to. */
  children: (onContextMenu: (event: MouseEvent) => void) => ReactNode
}

export function ContextMenu({ label, commands, children }: ContextMenuProps) {
  const [at, setAt] = useState<{ x: number; y: number }>()
  const anchor = useRef<HTMLSpanElement>(null)
  const close = () => setAt(undefined)
  return (
    <>
      {children(event => {
        event.preventDefault()
        setAt({ x: event.clientX, y: event.clientY })
      })}
      {at && (
        <>
          <span ref={anchor} className="menu-anchor" style={{ left: at.x, top: at.y }} />
          <Popover
            className="menu"
            triggerRef={anchor}
            placement="bottom start"
            isOpen
            onOpenChange={open => {
              if (!open) close()
            }}
          >
            <MenuItems label={label} commands={commands} onDone={close} />
          </Popover>
        </>
      )}
    </>
  )
}
