// Enter walks through the fields of one table or form in reading order and comes round to the first.

const walked =
  'input.entry:not(:disabled), select.entry:not(:disabled), textarea.entry:not(:disabled), button.entry:not(:disabled)'

const stops = (from: Element): HTMLElement[] => [
  ...(from.closest('[data-walk]')?.querySelectorAll<HTMLElement>(walked) ?? []),
]

export function nextField(from: HTMLElement): void {
  const fields = stops(from)
  const after = fields.find(
    field => (from.compareDocumentPosition(field) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0,
  )
  ;(after ?? fields[0])?.focus()
}

export function previousField(from: HTMLElement): void {
  stops(from)
    .findLast(field => (from.compareDocumentPosition(field) & Node.DOCUMENT_POSITION_PRECEDING) !== 0)
    ?.focus()
}

export const firstField = (inside: Element | null): void =>
  inside?.querySelector<HTMLElement>(walked)?.focus()
