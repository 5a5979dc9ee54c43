// Carries out a command on a job. Pure: the job given is never changed, and what a command leaves alone is shared.
import type { Command } from './command-schema.ts'
import type { CommandContext } from './commands/context.ts'
import { changeLayout } from './commands/change-layout.ts'
import {
  setArchived,
  setCircumstances,
  setComplaint,
  setEngine,
  setNotes,
  setTechnician,
} from './commands/job-facts.ts'
import { correctPulls } from './commands/correct-pulls.ts'
import { addPull, addPulls, unvoidPull, voidPull } from './commands/pulls.ts'
import { clearReading, setReading } from './commands/readings.ts'
import { setRepair } from './commands/repair.ts'
import { setInstruments, setUpTest } from './commands/set-up.ts'
import { addShots, fillSlots, moveShots, removeShots, setShotKind } from './commands/shots.ts'
import { swapSlots } from './commands/swap-slots.ts'
import { addTray, removeTray, renameTray } from './commands/trays.ts'
import { setWriteUp } from './commands/write-up.ts'
import type { Job } from './job-schema.ts'
import { done } from './refusal.ts'
import type { Outcome } from './refusal.ts'
import { unknownKind } from './unknown-kind.ts'

export type { CommandContext } from './commands/context.ts'

const carryOut = (job: Job, command: Command, context: CommandContext): Outcome<Job> => {
  switch (command.command) {
    case 'set complaint':
      return setComplaint(job, command)
    case 'set engine':
      return setEngine(job, command)
    case 'set circumstances':
      return setCircumstances(job, command)
    case 'set technician':
      return setTechnician(job, command)
    case 'set notes':
      return setNotes(job, command)
    case 'change layout':
      return changeLayout(job, command)
    case 'set archived':
      return setArchived(job, command, context)
    case 'add tray':
      return addTray(job, command, context)
    case 'rename tray':
      return renameTray(job, command)
    case 'remove tray':
      return removeTray(job, command)
    case 'add shots':
      return addShots(job, command)
    case 'move shots':
      return moveShots(job, command)
    case 'fill slots':
      return fillSlots(job, command)
    case 'swap slots':
      return swapSlots(job, command)
    case 'remove shots':
      return removeShots(job, command)
    case 'set shot kind':
      return setShotKind(job, command)
    case 'set reading':
      return setReading(job, command, context)
    case 'clear reading':
      return clearReading(job, command)
    case 'add pull':
      return addPull(job, command, context)
    case 'add pulls':
      return addPulls(job, command, context)
    case 'void pull':
      return voidPull(job, command, context)
    case 'unvoid pull':
      return unvoidPull(job, command)
    case 'correct pulls':
      return correctPulls(job, command, context)
    case 'set up test':
      return setUpTest(job, command)
    case 'set instruments':
      return setInstruments(job, command)
    case 'set repair':
      return setRepair(job, command, context)
    case 'set write-up':
      return setWriteUp(job, command)
    default:
      return unknownKind(command)
  }
}

/**
 * The job after the command, with `updatedAt` moved on; `rev` and `hash` are left to the store. A command that
 * changes nothing gives back the very same job; one that cannot be carried out gives a refusal.
 */
export const applyCommand = (job: Job, command: Command, context: CommandContext): Outcome<Job> => {
  const outcome = carryOut(job, command, context)
  if (!outcome.ok || outcome.value === job) return outcome
  return done({ ...outcome.value, updatedAt: context.now })
}
