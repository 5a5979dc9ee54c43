// Published limits contradict each other. Which rule set of each kind is the shop's own: its id in rule-sets.ts.
import { z } from 'zod'

const ruleId = z.string().regex(/^[a-z0-9-]{1,40}$/)

export const ruleChoiceSchema = z.strictObject({
  compressionSpread: ruleId.optional(),
  compressionShare: ruleId.optional(),
  leakDown: ruleId.optional(),
  idleVacuum: ruleId.optional(),
  crankingVacuum: ruleId.optional(),
  trims: ruleId.optional(),
  injectorBalance: ruleId.optional(),
})
export type RuleChoice = z.infer<typeof ruleChoiceSchema>
