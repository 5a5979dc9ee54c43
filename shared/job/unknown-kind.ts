// The end of a switch over every kind of something: the type checker sees that it is never reached.

/** Throws a TypeError, for a value that got past the schema all the same. */
export const unknownKind = (value: never): never => {
  throw new TypeError(`No such kind: ${JSON.stringify(value)}`)
}
