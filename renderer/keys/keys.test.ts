// No key does two things where two commands listen at once, and a press is spelled as the table spells it.
import { describe, expect, it } from 'vitest'
import { type KeyCommand, type KeyContext, keyCommands, outerContext } from './keys.ts'
import { pressedKeys } from './pressed-keys.ts'

const commands: readonly KeyCommand[] = keyCommands

/** A context and those around it, which listen at the same time. */
const listening = (context: KeyContext): KeyContext[] => {
  const outer = outerContext[context]
  return outer ? [context, ...listening(outer)] : [context]
}

const clashes = (table: readonly KeyCommand[], context: KeyContext): string[] => {
  const seen = table.filter(one => listening(context).includes(one.context)).map(one => one.keys)
  return seen.filter((keys, at) => seen.indexOf(keys) !== at)
}

describe('the key table', () => {
  it.each([...new Set(commands.map(one => one.context))])('gives every key one meaning in %s', context => {
    expect(clashes(commands, context)).toEqual([])
  })

  it('is checked in a way that notices a clash, with an outer context too', () => {
    const planted: KeyCommand = { context: 'plugs', keys: 'Mod+Z', does: 'Something else' }
    expect(clashes([...commands, planted], 'plugs')).toEqual(['Mod+Z'])
  })

  it('lets only chords act while somebody types, and leaves undo to the field', () => {
    const typing = commands.filter(one => one.whileTyping).map(one => one.keys)
    expect(typing.length).toBeGreaterThan(0)
    for (const keys of typing) expect(keys).toMatch(/^(Mod|Alt)\+/)
    expect(typing).not.toContain('Mod+Z')
  })

  it('says what each command does', () => {
    expect(commands.filter(one => one.does.trim() === '')).toEqual([])
  })
})

describe('a key press', () => {
  const press = (key: string, held: Partial<KeyboardEvent> = {}) =>
    pressedKeys({
      key,
      code: '',
      ctrlKey: false,
      metaKey: false,
      altKey: false,
      shiftKey: false,
      ...held,
    })

  it.each([
    [press('z', { ctrlKey: true }), 'Mod+Z'],
    [press('z', { metaKey: true }), 'Mod+Z'],
    [press('Z', { ctrlKey: true, shiftKey: true }), 'Mod+Shift+Z'],
    [press('?', { shiftKey: true }), '?'],
    [press('n'), 'N'],
    [press('1', { altKey: true, code: 'Digit1' }), 'Alt+1'],
    [press('¡', { altKey: true, code: 'Digit1' }), 'Alt+1'],
    [press(',', { ctrlKey: true }), 'Mod+,'],
    [press('Escape'), 'Escape'],
  ])('is spelled %s', (spelled, expected) => expect(spelled).toBe(expected))
})
