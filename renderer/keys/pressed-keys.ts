// A key press in the spelling of the table: "Mod+Shift+Z", "Alt+1", "?", "N".

type Press = Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>

/** Ctrl and Cmd both count as Mod: a press of the other platform's key does no harm. */
export function pressedKeys(event: Press): string {
  // With Alt held a Mac types signs in place of digits; the code still names the digit.
  const digit = event.altKey ? /^Digit(\d)$/.exec(event.code)?.[1] : undefined
  const key = digit ?? (event.key.length === 1 ? event.key.toUpperCase() : event.key)
  // Shift is part of a sign such as "?" already.
  const isLetter = /^[A-Z]$/.test(key) || key.length > 1
  const parts = [
    event.ctrlKey || event.metaKey ? 'Mod' : undefined,
    event.altKey ? 'Alt' : undefined,
    event.shiftKey && isLetter ? 'Shift' : undefined,
    key,
  ]
  return parts.filter(part => part !== undefined).join('+')
}
