// Whether a key press belongs to a field, so that single letters never act while somebody types.
export const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable ||
    target.matches('input:not([type="radio"], [type="checkbox"]), textarea, select'))
