// A button that opens a menu of commands for the thing beside it.
import { EllipsisVertical } from 'lucide-react'
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components'
import './menu.css'

export type MenuCommand = { id: string; text: string; isDisabled?: boolean; run: () => void }

type MenuButtonProps = { label: string; commands: readonly MenuCommand[] }

export function MenuButton({ label, commands }: MenuButtonProps) {
  return (
    <MenuTrigger>
      <Button aria-label={label} className="button button-icon">
        <EllipsisVertical aria-hidden="true" />
      </Button>
      <Popover className="menu" placement="bottom end">
        <MenuItems label={label} commands={commands} />
      </Popover>
    </MenuTrigger>
  )
}

type MenuItemsProps = { label: string; commands: readonly MenuCommand[]; onDone?: () => void }

export function MenuItems({ label, commands, onDone }: MenuItemsProps) {
  return (
    <Menu
      aria-label={label}
      className="menu-items"
      disabledKeys={commands.filter(one => one.isDisabled).map(one => one.id)}
      onAction={key => {
        commands.find(one => one.id === key)?.run()
        onDone?.()
      }}
    >
      {commands.map(one => (
        <MenuItem key={one.id} id={one.id} className="menu-item">
          {one.text}
        </MenuItem>
      ))}
    </Menu>
  )
}
