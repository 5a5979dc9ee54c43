// A button that shows only a picture; its name is spoken and shown on hover.
import type { ReactNode } from 'react'
import { Button as AriaButton } from 'react-aria-components'
import './button.css'

type IconButtonProps = { label: string; onPress: () => void; isDisabled?: boolean; children: ReactNode }

export function IconButton({ label, onPress, isDisabled = false, children }: IconButtonProps) {
  return (
    <span title={label}>
      <AriaButton aria-label={label} className="button button-icon" isDisabled={isDisabled} onPress={onPress}>
        {children}
      </AriaButton>
    </span>
  )
}
