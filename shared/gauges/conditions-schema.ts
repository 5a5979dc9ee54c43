// The state of engine and set-up while one test was made, once for each test and stage: what can spoil it.
import { z } from 'zod'

export const testConditionsSchema = z.strictObject({
  engine: z.enum(['warm', 'cold']).optional(),
  throttle: z.enum(['open', 'closed']).optional(),
  plugs: z.enum(['all out', 'only the tested one out']).optional(),
  /** Ignition and injection were disabled. */
  disabled: z.boolean().optional(),
  idleControl: z.enum(['fixed', 'active']).optional(),
  batteryVoltsBefore: z.number().finite().min(0).max(60).optional(),
  batteryVoltsAfter: z.number().finite().min(0).max(60).optional(),
  crankingRpm: z.number().finite().min(0).max(1000).optional(),
})
export type TestConditions = z.infer<typeof testConditionsSchema>
