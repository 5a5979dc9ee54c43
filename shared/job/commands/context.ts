// What a command needs from outside: the time, and who is at work.

export type CommandContext = {
  /** ISO 8601 with offset. */
  now: string
  person?: string | undefined
}

/** `by` as a field to spread: nothing when nobody is named. */
export const byPerson = ({ person }: CommandContext): { by?: string } =>
  person === undefined || person === '' ? {} : { by: person }
