// A copy of an object without one of its optional fields, so that "not there" never becomes "there, undefined".

type OptionalKey<T> = { [K in keyof T]-?: object extends Pick<T, K> ? K : never }[keyof T]

/** The object itself when the field is not there. */
export const without = <T extends object>(object: T, key: OptionalKey<T>): T => {
  if (!Object.hasOwn(object, key)) return object
  const copy = { ...object }
  delete copy[key]
  return copy
}
