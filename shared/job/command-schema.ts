// Every change to a job, as data: one schema a command. `commands/` holds what each one does.
import { z } from 'zod'
import { cylinderSchema, layoutSchema } from '../engine/layout-schema.ts'
import { testConditionsSchema } from '../gauges/conditions-schema.ts'
import { correctionHowSchema } from '../gauges/correction-schema.ts'
import { instrumentSchema } from '../gauges/instrument-schema.ts'
import { conditions, shotKinds } from '../plug/condition.ts'
import { idSchema, personSchema } from './common-schema.ts'
import { circumstancesSchema, engineSchema, repairSchema, writeUpChoicesSchema } from './job-schema.ts'
import { limits } from './limits.ts'
import { pullSchema, testKinds } from './pull-schema.ts'
import { plugPositionSchema, readingDetailsSchema, shotSchema, stageSchema } from './tray-schema.ts'

export const slotAddressSchema = z.strictObject({
  cylinder: cylinderSchema,
  plug: plugPositionSchema.optional(),
})

const details = readingDetailsSchema.shape

/** Fields left out stay as they are; null takes a field away. */
export const readingChangeSchema = z.strictObject({
  condition: z.enum(conditions).nullable().optional(),
  details: z
    .strictObject({
      insulatorColour: details.insulatorColour.nullable(),
      deposits: details.deposits.nullable(),
      wetness: details.wetness.nullable(),
      electrodeWear: details.electrodeWear.nullable(),
      insulatorDamage: details.insulatorDamage.nullable(),
      gap: details.gap.nullable(),
      oilInWell: details.oilInWell.nullable(),
    })
    .optional(),
  note: z.string().max(2000).nullable().optional(),
})

const tray = { trayId: idSchema }
const shots = z.array(idSchema).min(1).max(2000)

export const commandSchema = z.discriminatedUnion('command', [
  z.strictObject({ command: z.literal('set complaint'), complaint: z.string().max(4000) }),
  z.strictObject({ command: z.literal('set engine'), engine: engineSchema }),
  z.strictObject({ command: z.literal('set circumstances'), circumstances: circumstancesSchema }),
  z.strictObject({ command: z.literal('set technician'), technician: personSchema.nullable() }),
  z.strictObject({ command: z.literal('set notes'), notes: z.string().max(8000) }),
  /** Slots that both layouts have keep their plugs; shots of the others go back to the unsorted strip. */
  z.strictObject({ command: z.literal('change layout'), layout: layoutSchema }),
  z.strictObject({ command: z.literal('set archived'), archived: z.boolean() }),

  z.strictObject({
    command: z.literal('add tray'),
    ...tray,
    name: z.string().min(1).max(80),
    stage: stageSchema,
  }),
  z.strictObject({
    command: z.literal('rename tray'),
    ...tray,
    name: z.string().min(1).max(80),
    stage: stageSchema,
  }),
  z.strictObject({ command: z.literal('remove tray'), ...tray }),

  /** Without `to` the shots go to the unsorted strip. */
  z.strictObject({
    command: z.literal('add shots'),
    ...tray,
    shots: z.array(shotSchema).min(1).max(2000),
    to: slotAddressSchema.optional(),
  }),
  z.strictObject({ command: z.literal('move shots'), ...tray, shots, to: slotAddressSchema.nullable() }),
  z.strictObject({
    command: z.literal('fill slots'),
    ...tray,
    assignments: z
      .array(z.strictObject({ shot: idSchema, to: slotAddressSchema }))
      .min(1)
      .max(2000),
  }),
  /** Exchanges everything of two slots: shots and reading. */
  z.strictObject({ command: z.literal('swap slots'), ...tray, a: slotAddressSchema, b: slotAddressSchema }),
  z.strictObject({ command: z.literal('remove shots'), ...tray, shots }),
  z.strictObject({ command: z.literal('set shot kind'), ...tray, shots, kind: z.enum(shotKinds) }),

  z.strictObject({
    command: z.literal('set reading'),
    ...tray,
    slots: z.array(slotAddressSchema).min(1).max(32),
    change: readingChangeSchema,
  }),
  z.strictObject({
    command: z.literal('clear reading'),
    ...tray,
    slots: z.array(slotAddressSchema).min(1).max(32),
  }),

  z.strictObject({ command: z.literal('add pull'), pull: pullSchema }),
  /** All of them or none, and one step back. */
  z.strictObject({
    command: z.literal('add pulls'),
    pulls: z.array(pullSchema).min(1).max(limits.pullsPerJob),
  }),
  z.strictObject({ command: z.literal('void pull'), pullId: idSchema, reason: z.string().min(1).max(400) }),
  z.strictObject({ command: z.literal('unvoid pull'), pullId: idSchema }),
  /** A misread gauge, put right in one go; every entry stays as it was made beside what counts now. */
  z.strictObject({
    command: z.literal('correct pulls'),
    pullIds: z.array(idSchema).min(1).max(limits.pullsPerJob),
    how: correctionHowSchema,
    reason: z.string().min(1).max(400),
  }),
  z.strictObject({
    command: z.literal('set up test'),
    test: z.enum(testKinds),
    stage: stageSchema,
    conditions: testConditionsSchema,
  }),
  z.strictObject({
    command: z.literal('set instruments'),
    instruments: z.array(instrumentSchema).max(limits.instrumentsPerJob),
  }),

  z.strictObject({
    command: z.literal('set repair'),
    repair: repairSchema.omit({ at: true, by: true }).nullable(),
  }),
  z.strictObject({ command: z.literal('set write-up'), writeUp: writeUpChoicesSchema }),
])

export type Command = z.infer<typeof commandSchema>
export type CommandName = Command['command']
export type CommandOf<N extends CommandName> = Extract<Command, { command: N }>
export type SlotAddress = z.infer<typeof slotAddressSchema>
export type ReadingChange = z.infer<typeof readingChangeSchema>
