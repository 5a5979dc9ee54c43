// What can be wrong with a network, its evidence or a question to it, and the answer type that carries it.

/** `where` names the variable, table or slot at fault; `what` says what is wrong with it in plain words. */
export type InferenceProblem = { kind: InferenceProblemKind; where: string; what: string }

export type InferenceProblemKind =
  | 'unknown variable'
  | 'unknown slot'
  | 'duplicate name'
  | 'bad variable'
  | 'bad table'
  | 'bad evidence'
  | 'no table'
  | 'cycle'
  | 'too large'
  | 'impossible evidence'
  | 'hidden variables'
  | 'stale posterior'

export type Answer<T> = { ok: true; value: T } | { ok: false; problem: InferenceProblem }

export const found = <T>(value: T): Answer<T> => ({ ok: true, value })

export const failed = (
  kind: InferenceProblemKind,
  where: string,
  what: string,
): { ok: false; problem: InferenceProblem } => ({ ok: false, problem: { kind, where, what } })
