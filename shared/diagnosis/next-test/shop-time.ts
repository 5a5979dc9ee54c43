// What tests, set-ups and repairs cost, as data that a shop can edit. Minutes are those of a practised hand on an engine that
// is easy to reach: common practice, our own estimates, no published times.

/** Opened or fitted once for all that needs it; `eachPlug` is added for every plug of the engine. */
export type SetUpTime = { minutes: number; eachPlug?: number }

/**
 * `minutes` of one test (of one cylinder where it is of a cylinder). `bother`: minutes that one would give to be spared it,
 * for what it puts at risk (a lead pulled off, a hot engine cranked) rather than for its time.
 */
export type TestTime = { minutes: number; bother: number; needs: readonly string[] }

/** A repair with its parts at their price in shop minutes. `proof`: what shows that it worked. */
export type RepairTime = { action: string; proof: string; minutes: number; needs: readonly string[] }

export type ShopTimes = {
  setUps: Readonly<Record<string, SetUpTime>>
  tests: Readonly<Record<string, TestTime>>
  /** By cause. */
  repairs: Readonly<Record<string, RepairTime>>
  /** What a repair that changes nothing costs beyond its own minutes: a part that cannot go back, and trust. */
  wrongRepairMinutes: number
  /** What it costs to hand the car back with a fault in it. */
  comebackMinutes: number
}
