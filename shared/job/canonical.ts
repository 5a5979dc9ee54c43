// One text for one document, whatever order its fields came in: what a content hash is taken over.

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/**
 * JSON with keys sorted by UTF-16 code units and no white space, as RFC 8785 (JSON Canonicalization Scheme)
 * orders and spells it. Fields that are undefined are left out, as JSON.stringify does.
 * Throws a TypeError on what JSON cannot hold: NaN, infinities, functions, bigints.
 */
export const canonicalJson = (value: unknown): string => {
  if (value === null || typeof value === 'boolean' || typeof value === 'string') return JSON.stringify(value)
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new TypeError(`JSON has no way to write ${value}`)
    return JSON.stringify(value)
  }
  if (Array.isArray(value))
    return `[${value.map(item => (item === undefined ? 'null' : canonicalJson(item))).join(',')}]`
  if (typeof value === 'object') {
    const fields = Object.entries(value)
      .filter(([, field]) => field !== undefined)
      .toSorted(([a], [b]) => byCodeUnit(a, b))
      .map(([key, field]) => `${JSON.stringify(key)}:${canonicalJson(field)}`)
    return `{${fields.join(',')}}`
  }
  throw new TypeError(`JSON has no way to write a ${typeof value}`)
}

/** Same content, whatever the order of fields. */
export const sameContent = (a: unknown, b: unknown): boolean =>
  a === b || (a !== undefined && b !== undefined && canonicalJson(a) === canonicalJson(b))
