// The page's push button; `main` is the one action a place is about.
import { Button as AriaButton, type ButtonProps as AriaButtonProps } from 'react-aria-components'
import './button.css'

type ButtonProps = Omit<AriaButtonProps, 'className' | 'style'> & { kind?: 'main' | 'plain' }

export function Button({ kind = 'plain', ...props }: ButtonProps) {
  return <AriaButton {...props} className={`button button-${kind}`} />
}
