// Plays a scenario on the simulated disk, cuts the power after every operation in many ways, and opens what is left.
import { FaultError } from '../../../electron/services/fault.ts'
import { readStoredJob } from '../../../electron/services/store/job-file.ts'
import { isLong, open } from './example.ts'
import { inTrash, nowhere, Promised, type Scenario, stateOf } from './scenarios.ts'
import { type Choice, SimulatedDisk } from './simulated-disk.ts'

const folder = '/catalogue'

type Moment = { disk: SimulatedDisk; promised: Promised }

export type Outcome = {
  /** Flushes that the scenario itself made, without opening and preparing. */
  flushes: number
  states: number
  violations: string[]
}

/** The same numbers for the same seed. */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state ^ (state >>> 15), 0x2c1b3c6d) + 0x9e3779b9) >>> 0
    return ((state ^ (state >>> 13)) >>> 0) / 2 ** 32
  }
}

/** Unflushed content after the cut: absent, whole, cut at a sector, long enough but empty, or with a foreign sector. */
function damagedContent(written: Buffer, random: () => number): Buffer {
  const sector = random() < 0.5 ? 512 : 4096
  const at = Math.min(Math.floor((random() * written.length) / sector) * sector, written.length)
  const kinds = [
    () => Buffer.alloc(0),
    () => written,
    () => written.subarray(0, at),
    () => Buffer.alloc(written.length),
    () =>
      Buffer.concat([
        written.subarray(0, at),
        Buffer.alloc(Math.min(sector, written.length - at), 0x5a),
        written.subarray(at + sector),
      ]),
  ]
  return (kinds[Math.floor(random() * kinds.length)] ?? kinds[0])?.() ?? written
}

function choices(seed: number): Choice[] {
  const patterns = isLong ? 200 : 16
  const random = randomFrom(seed)
  const nothing: Choice = { keepsName: () => false, content: () => Buffer.alloc(0) }
  const namesOnly: Choice = { keepsName: () => true, content: () => Buffer.alloc(0) }
  const mixed: Choice = {
    keepsName: () => random() < 0.5,
    content: written => damagedContent(written, random),
  }
  return [nothing, namesOnly, ...Array.from({ length: patterns - 2 }, () => mixed)]
}

/** Makes the lock look as it does after a new start of the machine: its holder ran before that. */
async function asAfterReboot(disk: SimulatedDisk): Promise<void> {
  const lock = `${folder}/lock`
  if ((await disk.disk.stamp(lock)) === null) return
  const text = (await disk.disk.read(lock)).toString('utf8')
  disk.alter(lock, Buffer.from(text.replace(/"boot":"[^"]*"/, '"boot":"before the power cut"')))
}

/** What is wrong after the cut, in words; empty when everything promised is there. */
async function look({ disk, promised }: Moment, choice: Choice): Promise<string[]> {
  const after = disk.afterPowerCut(choice)
  await asAfterReboot(after)
  try {
    const catalogue = await open(folder, { disk: after.disk })
    const wrong: string[] = []
    if (catalogue.readOnly !== null) wrong.push(`opens for reading only: ${catalogue.readOnly}`)
    const trash = async (id: string) => {
      const name = `${folder}/trash/${id}/job.json`
      if ((await after.disk.stamp(name)) === null) return nowhere
      return inTrash(readStoredJob(await after.disk.read(name), name).complaint)
    }
    for (const thing of new Set([...promised.held.keys(), ...promised.possible.keys()])) {
      const state = await stateOf(catalogue, thing, trash)
      const allowed = [promised.held.get(thing) ?? nowhere, promised.possible.get(thing)]
      if (!allowed.includes(state)) wrong.push(`${thing} is ${state}, promised was ${allowed.join(' or ')}`)
    }
    const { problems } = await catalogue.check({ mend: false })
    for (const { file, kind } of problems)
      if (kind !== 'not named by any job') wrong.push(`check says ${file} is ${kind}`)
    await catalogue.close()
    return wrong
  } catch (error) {
    if (!(error instanceof FaultError)) throw error
    return [`fault ${error.code}: ${error.message}`]
  }
}

/** `forget`: number of the flush that does nothing, counted from the start of the scenario. */
export async function tryPowerLoss(scenario: Scenario, forget?: number): Promise<Outcome> {
  const disk = new SimulatedDisk()
  const promised = new Promised()
  const catalogue = await open(folder, { disk: disk.disk })
  await scenario.before?.(catalogue, promised)
  await catalogue.check({ mend: false })

  const moments: Moment[] = []
  let flushes = 0
  let isOver = false
  disk.flushes = () => isOver || flushes++ !== forget
  const note = () => {
    if (!isOver) moments.push({ disk: disk.copy(), promised: promised.copy() })
  }
  note()
  disk.afterChange = note
  await scenario.run(catalogue, promised)
  note()
  isOver = true
  await catalogue.close()

  const outcome: Outcome = { flushes, states: 0, violations: [] }
  for (const [at, moment] of moments.entries())
    for (const [pattern, choice] of choices(at + 1).entries()) {
      outcome.states += 1
      for (const wrong of await look(moment, choice))
        outcome.violations.push(`after operation ${at}, pattern ${pattern}: ${wrong}`)
      if (outcome.violations.length > 20) return outcome
    }
  return outcome
}
