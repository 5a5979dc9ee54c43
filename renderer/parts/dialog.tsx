// A dialog over the page: focus stays inside, Escape and the backdrop close it, focus goes back where it was.
import type { ReactNode } from 'react'
import { Dialog as AriaDialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import './dialog.css'

type DialogProps = { title: string; onClose: () => void; wide?: boolean; children: ReactNode }

export function Dialog({ title, onClose, wide = false, children }: DialogProps) {
  return (
    <ModalOverlay
      className="dialog-backdrop"
      isOpen
      isDismissable
      onOpenChange={open => {
        if (!open) onClose()
      }}
    >
      <Modal className={wide ? 'dialog dialog-wide' : 'dialog'}>
        <AriaDialog className="dialog-content">
          <Heading slot="title">{title}</Heading>
          {children}
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  )
}
