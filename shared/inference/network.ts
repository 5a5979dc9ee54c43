// A discrete Bayesian network as data, and the evidence on it. This header describes the whole engine on one page.
//
// The engine is exact and knows nothing of what its variables mean. Everything is plain data and pure functions; nothing
// throws for bad input: each function answers `{ok: true, value}` or `{ok: false, problem}` (problem.ts), where a table that
// does not sum to 1, an unknown variable or evidence that cannot happen is named.
//
//   const compiled = compileNetwork(network)                      compile.ts      structure; once
//   const posterior = propagate(compiled.value, evidence, work?)  propagate.ts    new evidence; as often as wanted
//   marginal(posterior.value, 'engine')   -> Float64Array         posterior.ts    P(variable | evidence)
//   joint(posterior.value, ['a', 'b'])    -> Float64Array         posterior.ts    P(a, b | evidence), last name fastest
//   posterior.value.logEvidence                                                   natural log of P(evidence)
//   expectedInformation(posterior, 'test', ['a', 'b'])            expected-information.ts   bits, of a variable
//   expectedInformationOfTest(posterior, {scope, outcomes, values}, targets)               bits, of a test that is no variable
//   mostProbableExplanation(compiled, evidence)                   explanation.ts  likeliest state of everything
//   likelyExplanations(posterior, 0.001)                          likely-explanations.ts   all assignments that likely
//   noisyOrTable(noisyOr), noisyMaxTable(...)                     noisy-or.ts, noisy-max.ts   the full tables
//
// Tables are flat, row by row: the values of `scope` (or of `[...parents, child]`) with the LAST name running fastest.
// A network has four kinds of parts. `tables`: P(child | parents). `noisyOrs`, `noisyMaxes`: the same, given by one column a
// parent; they are decomposed into a chain, so that a child with thirty parents costs thirty small tables. `factors`: fixed
// non-negative tables over several variables, not normalised. `slots`: places, named, where each run may put a likelihood
// over several variables (P(what was seen | scope), up to a constant); a slot left empty means "nothing seen".
// A variable needs one table (or noisy-OR, noisy-MAX) as a child, or a place in the scope of a factor.
//
// Evidence: `observed` fixes a state, `soft` weighs the states of one variable, `likelihoods` fill slots. Only ratios within
// one vector matter for posteriors; logEvidence counts the values as given. The order of keys does not matter.
//
// Cost. Variables are eliminated in min-fill or min-weight order, whichever gives less work; each eliminated variable has one
// table over itself and its separator. In those tables the variable eliminated first runs fastest. So a likelihood over a big
// variable and what it shares with others is cheapest as scope [shared..., big]: ['engine', 'pair12', 'pair23', 'cyl2'].
// Such a likelihood is read where it lies, as long as the cylinder has no other table but its own prior P(cyl2): multiply
// what bears on the same variables into one slot. Any other order gives the same answer, only slower. Do not change a
// likelihood array while its posterior is in use. `propagate` allocates its tables anew unless `work`
// (workspaceFor(compiled)) is handed in; a posterior in a reused workspace answers 'stale posterior' after the next run.
//
// Numbers: messages are scaled by their largest entry and the logs kept, so long chains of small probabilities are safe;
// only within ONE table do relative likelihoods below 1e-300 count as zero. Zeros and deterministic tables are fine.
// Sources: Lauritzen & Spiegelhalter 1988 (propagation on trees), Dechter 1999 (bucket elimination, whose tree is the one
// used here), Jensen, Lauritzen & Olesen 1990 (division by the old message), Diez & Galan 2003 (noisy-MAX). From memory.

export type Variable = { name: string; states: number }

/** P(child | parents): the values of [...parents, child], child fastest; each row sums to 1 (1e-9). */
export type Table = { child: string; parents: readonly string[]; values: ArrayLike<number> }

/**
 * Child (two states: 0 absent, 1 present) is absent only if every cause fails to bring it about, and the leak does too.
 * `chance`: the probability that this parent alone makes the child present; a number for a two-state parent in state 1
 * (state 0 never does), or one number for each state of the parent. `leak`: the chance with no cause there.
 */
export type NoisyOr = {
  child: string
  leak: number
  causes: readonly { parent: string; chance: number | readonly number[] }[]
}

/**
 * Child takes the largest of independent effects, one of each parent and the leak. `effect`: P(effect | parent state), the
 * values of [parent, effect], effect fastest, with as many effect states as the child has. `leak`: a distribution over them.
 */
export type NoisyMax = {
  child: string
  leak: ArrayLike<number>
  causes: readonly { parent: string; effect: ArrayLike<number> }[]
}

/** A fixed non-negative table over several variables, last name fastest; it need not sum to anything. */
export type Potential = { name: string; scope: readonly string[]; values: ArrayLike<number> }

/** A place for a likelihood over several variables, filled anew in each run. */
export type Slot = { name: string; scope: readonly string[] }

export type Network = {
  variables: readonly Variable[]
  tables?: readonly Table[]
  noisyOrs?: readonly NoisyOr[]
  noisyMaxes?: readonly NoisyMax[]
  factors?: readonly Potential[]
  slots?: readonly Slot[]
}

export type Evidence = {
  /** Variable to state number. */
  observed?: Readonly<Record<string, number>>
  /** Variable to the likelihood of each of its states. */
  soft?: Readonly<Record<string, ArrayLike<number>>>
  /** Slot to the likelihood of each cell of its scope, last name fastest. */
  likelihoods?: Readonly<Record<string, Float64Array>>
}
