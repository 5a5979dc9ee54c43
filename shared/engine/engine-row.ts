// One line of the built-in engines: a way of numbering the cylinders, and the firing orders in use with it.

type FiringOrderRow = {
  order: number[]
  /** "seen ..." for a public text that was read, else "common practice" or "from memory, unchecked". */
  source: string
}

export type EngineRow = {
  /** Start of the ids of its layouts, which end in the firing order: never change one that was released. */
  id: string
  /** Start of the names of its layouts. */
  name: string
  arrangement: 'inline' | 'vee' | 'flat'
  /** Name of a bank and its cylinders from front to rear; the first is drawn on the left. */
  banks: [name: string, cylinders: number[]][]
  /** Crank degrees from each firing to the next; left out where they are all equal. */
  intervalsDeg?: number[]
  note?: string
  orders: FiringOrderRow[]
}
