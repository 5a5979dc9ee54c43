// Nothing that was acknowledged is lost and nothing is torn, whatever moment the power goes; and every flush is needed.
import { afterAll, describe, expect, it } from 'vitest'
import { tryPowerLoss } from './power-loss.ts'
import { scenarios } from './scenarios.ts'

let states = 0
afterAll(() => console.log(`power loss: ${states} states opened after a cut`))

describe('a power cut at any moment', () => {
  it.each(scenarios)('keeps every promise: $name', async scenario => {
    const outcome = await tryPowerLoss(scenario)
    states += outcome.states
    expect(outcome.violations).toEqual([])
    expect(outcome.states).toBeGreaterThan(20)
  })
})

/** Counted by hand: of a new folder's name in its parent, of the content, of the file's name in its folder. */
const flushed = [
  { name: 'create a job', flushes: 3 },
  { name: 'save a job', flushes: 2 },
  { name: 'change settings', flushes: 4 },
  { name: 'take a photo in and show it', flushes: 5 },
]

describe('every flush is needed: without it a cut breaks a promise', () => {
  it.each(flushed)('$name', async ({ name, flushes }) => {
    const scenario = scenarios.find(one => one.name === name)
    if (!scenario) throw new Error(`no scenario ${name}`)
    expect((await tryPowerLoss(scenario)).flushes).toBe(flushes)
    for (let forget = 0; forget < flushes; forget += 1) {
      const { violations } = await tryPowerLoss(scenario, forget)
      expect(violations, `without flush ${forget}`).not.toEqual([])
    }
  })
})
