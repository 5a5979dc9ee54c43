// What one field of a test's entry is: its words, how its text is read, its choices. What is typed is kept as text.

/** Text by the name of its field. A choice is its option; several choices are their places, "2,5". */
export type Typed = Readonly<Record<string, string>>

type Common = {
  name: string
  /** Above the column and first in the spoken label. */
  title: string
  unit?: string
  /** Shown only when a person asks for more fields. */
  more?: true
}
type NumberField = Common & { kind: 'number'; parse: (text: string) => unknown }
type TextField = Common & {
  kind: 'text'
  lines?: number
  mostLetters: number
  parse?: (text: string) => unknown
}
export type ChoiceField = Common & {
  kind: 'choice'
  options: readonly string[]
  /** One option always stands: pressing it again does not take it away. */
  needed?: true
  /** What an option looks like, where its name alone is not enough. */
  describe?: Readonly<Record<string, string>>
}
export type SeveralField = Common & { kind: 'several'; options: readonly string[] }

export type Field = NumberField | TextField | ChoiceField | SeveralField

export const isBlank = (text: string | undefined): boolean => (text ?? '').trim() === ''

/** Whether something stands in the field that cannot be read. */
export function isWrong(field: Field, text: string | undefined): boolean {
  if (text === undefined || isBlank(text)) return false
  switch (field.kind) {
    case 'number':
      return field.parse(text) === null
    case 'text':
      return text.length > field.mostLetters || field.parse?.(text) === null
    case 'choice':
      return !field.options.includes(text)
    default:
      return text.split(',').some(place => field.options[Number(place) - 1] === undefined)
  }
}

/** What the text reads as; undefined when it is blank or unreadable. */
export const given = <Value>(
  text: string | undefined,
  parse: (text: string) => Value | null,
): Value | undefined => (text === undefined || isBlank(text) ? undefined : (parse(text) ?? undefined))

/** The option that was chosen. */
export const chosen = <Option extends string>(
  text: string | undefined,
  options: readonly Option[],
): Option | undefined => options.find(one => one === text)

/** The options at the places typed, in their own order. */
export const severalChosen = <Option extends string>(
  text: string | undefined,
  options: readonly Option[],
): Option[] => {
  const places = new Set((text ?? '').split(','))
  return options.filter((_, at) => places.has(String(at + 1)))
}

/** The text after the option at `place` (from 1) was put in or taken out. */
export function toggled(text: string, place: number): string {
  const places = new Set(text.split(',').filter(one => one !== ''))
  const name = String(place)
  if (!places.delete(name)) places.add(name)
  return [...places].toSorted().join(',')
}
