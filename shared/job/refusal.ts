// An expected "no": what happened, to what, what to do. Pure code returns it; hosts turn it into a typed error.

export type Refusal = { what: string; where: string; hint: string }
export type Outcome<T> = { ok: true; value: T } | { ok: false; refusal: Refusal }

export const done = <T>(value: T): Outcome<T> => ({ ok: true, value })
export const refuse = (what: string, where: string, hint: string): { ok: false; refusal: Refusal } => ({
  ok: false,
  refusal: { what, where, hint },
})
