// In which order variables are summed out. The order decides the size of the tables; the best is hard to find, so two
// well-known greedy rules are tried and the one with less work is taken. Source: Kjaerulff 1990 (from memory).

export type Elimination = {
  /** Variables, first eliminated first. */
  order: readonly number[]
  /** For each variable, those it shares a table with when it is eliminated (all eliminated later). */
  separators: readonly (readonly number[])[]
  /** Cells of all tables together. */
  cells: number
}

type Graph = Set<number>[]
type Score = { first: number; second: number }
type Rule = (variable: number, graph: Graph, cards: readonly number[]) => number

/**
 * Min-fill and min-weight, whichever gives fewer cells in all. Ties go to the smaller separator: taking the variable with
 * more states away first leaves less to its neighbours. Then to the lower number, so that it is deterministic.
 */
export function eliminationOrder(
  scopes: readonly (readonly number[])[],
  cards: readonly number[],
): Elimination {
  const byFill = eliminate(scopes, cards, fill)
  const byWeight = eliminate(scopes, cards, weight)
  return byFill.cells <= byWeight.cells ? byFill : byWeight
}

function eliminate(
  scopes: readonly (readonly number[])[],
  cards: readonly number[],
  rule: Rule,
): Elimination {
  const graph = graphOf(scopes, cards.length)
  const order: number[] = []
  const separators: number[][] = cards.map(() => [])
  const left = new Set(cards.keys())
  const scoreOf = (variable: number): Score => {
    const cells = weight(variable, graph, cards)
    return { first: rule(variable, graph, cards), second: cells / (cards[variable] ?? 1) }
  }
  const scores = cards.map((_, variable) => scoreOf(variable))
  let cells = 0
  while (left.size > 0) {
    const next = leastOf(left, scores)
    const neighbours = [...(graph[next] ?? [])]
    order.push(next)
    separators[next] = neighbours
    cells += weight(next, graph, cards)
    left.delete(next)
    remove(next, graph)
    for (const changed of touched(neighbours, graph)) scores[changed] = scoreOf(changed)
  }
  return { order, separators, cells }
}

function graphOf(scopes: readonly (readonly number[])[], count: number): Graph {
  const graph = Array.from({ length: count }, () => new Set<number>())
  for (const scope of scopes) {
    for (const one of scope) for (const other of scope) if (one !== other) graph[one]?.add(other)
  }
  return graph
}

function leastOf(left: ReadonlySet<number>, scores: readonly Score[]): number {
  let least = -1
  let best: Score = { first: Number.POSITIVE_INFINITY, second: Number.POSITIVE_INFINITY }
  for (const variable of left) {
    const score = scores[variable] ?? best
    const better = score.first < best.first || (score.first === best.first && score.second < best.second)
    if (!better && least >= 0) continue
    least = variable
    best = score
  }
  return least
}

/** Joins the neighbours of a variable to each other and takes it out. */
function remove(variable: number, graph: Graph): void {
  const neighbours = [...(graph[variable] ?? [])]
  for (const one of neighbours) {
    for (const other of neighbours) if (one !== other) graph[one]?.add(other)
    graph[one]?.delete(variable)
  }
}

/** Whose score an elimination can change: the neighbours and their neighbours. */
function touched(neighbours: readonly number[], graph: Graph): Set<number> {
  const set = new Set(neighbours)
  for (const one of neighbours) for (const other of graph[one] ?? []) set.add(other)
  return set
}

/** Cells of the table that eliminating the variable now makes. */
function weight(variable: number, graph: Graph, cards: readonly number[]): number {
  let cells = cards[variable] ?? 1
  for (const other of graph[variable] ?? []) cells *= cards[other] ?? 1
  return cells
}

/** Edges that eliminating the variable now adds. */
function fill(variable: number, graph: Graph): number {
  const neighbours = [...(graph[variable] ?? [])]
  let missing = 0
  neighbours.forEach((one, at) => {
    for (const other of neighbours.slice(at + 1)) if (!graph[one]?.has(other)) missing += 1
  })
  return missing
}
