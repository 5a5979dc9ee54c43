// An engine's cylinders as seen from above: banks from front to rear, firing order, plugs a cylinder.
import { z } from 'zod'

export const cylinderSchema = z.int().min(1).max(16)

export const bankSchema = z.strictObject({
  name: z.string().min(1).max(40),
  /** Cylinder numbers from the front of the engine to its rear. */
  cylinders: z.array(cylinderSchema).min(1).max(16),
})

export const arrangements = ['inline', 'vee', 'flat'] as const

/** Structural shape only; `checkLayout` in `check-layout.ts` holds the rules that span fields. */
export const layoutSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9][a-z0-9-]{0,63}$/),
  name: z.string().min(1).max(120),
  arrangement: z.enum(arrangements),
  /** First bank is drawn on the left as seen from above with the front of the engine at the top. */
  banks: z.array(bankSchema).min(1).max(2),
  firingOrder: z.array(cylinderSchema).min(1).max(16),
  /** Crank degrees between firings, starting after the first cylinder of the firing order; sums to 720. */
  intervalsDeg: z.array(z.number().min(0).max(720)).min(1).max(16),
  plugsPerCylinder: z.union([z.literal(1), z.literal(2)]),
  /** Where the front of the engine (pulley end) points on the drawing. */
  front: z.enum(['top', 'bottom', 'left', 'right']),
  /** True when the shop drew it; built-in layouts leave it out. */
  own: z.boolean().optional(),
  note: z.string().max(400).optional(),
  /** Where numbering and firing order were read. */
  source: z.string().max(200).optional(),
})

export type Layout = z.infer<typeof layoutSchema>
export type Bank = z.infer<typeof bankSchema>
export type Arrangement = Layout['arrangement']
