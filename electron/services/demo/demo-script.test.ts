// The demonstration jobs: they parse, fit their engines, are marked invented, and show what they are there to show.
import { readFileSync, readdirSync } from 'node:fs'
import { basename } from 'node:path'
import { describe, expect, it } from 'vitest'
import { conditionMap } from '../../../shared/diagnosis/condition-map.ts'
import { engineRemarks } from '../../../shared/diagnosis/engine-remarks.ts'
import { layoutById } from '../../../shared/engine/layouts.ts'
import { slotKey, slotsOf } from '../../../shared/engine/slots.ts'
import { judgeAll } from '../../../shared/gauges/gauges.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import { newJob } from '../../../shared/job/new-job.ts'
import type { Slot, Stage } from '../../../shared/job/tray-schema.ts'
import { writeUp } from '../../../shared/writeup/findings.ts'
import { defaultSettings } from '../../../shared/contract/settings-schema.ts'
import { type DemoScript, demoScriptSchema, pullFromScript } from './demo-script.ts'

const folder = new URL('../../../sample-images/jobs/', import.meta.url)
const scriptOf = (name: string): DemoScript =>
  demoScriptSchema.parse(JSON.parse(readFileSync(new URL(`${name}.json`, folder), 'utf8')))
const names = readdirSync(folder)
  .filter(file => file.endsWith('.json'))
  .map(file => basename(file, '.json'))

/** The job without its photos. */
function jobOf(script: DemoScript): Job {
  const layout = layoutById(script.layout)
  if (!layout) throw new Error(`no layout ${script.layout}`)
  const base = newJob({
    id: 'demo',
    trayId: 'tray-0',
    now: script.at,
    complaint: script.complaint,
    engine: script.engine,
    layout,
    demo: true,
  })
  const trays = script.trays.map((tray, at) => ({
    id: `tray-${at}`,
    name: tray.name,
    stage: tray.stage,
    createdAt: script.at,
    unsorted: [],
    slots: slotsOf(layout).map((address): Slot => {
      const reading = tray.readings[slotKey(address)]
      if (!reading) return { ...address, shots: [] }
      const { condition, details, note } = reading
      return {
        ...address,
        shots: [],
        reading: {
          by: { kind: 'person' },
          at: script.at,
          ...(condition === undefined ? {} : { condition }),
          details,
          ...(note === undefined ? {} : { note }),
        },
      }
    }),
  }))
  return {
    ...base,
    trays,
    circumstances: script.circumstances,
    pulls: script.pulls.map((pull, at) => pullFromScript(pull, `pull-${at}`, script.at)),
    ...(script.repair ? { repair: { ...script.repair, at: script.at } } : {}),
  }
}

const statesOf = (name: string, stage: Stage = 'as found') =>
  conditionMap(jobOf(scriptOf(name)), stage).map(one => one.state)
const remarksOf = (name: string) => engineRemarks(jobOf(scriptOf(name)), 'as found').map(one => one.kind)

describe.each(names)('%s', name => {
  const script = scriptOf(name)
  const layout = layoutById(script.layout)
  const slots = layout ? slotsOf(layout).map(slotKey) : []

  it('names a layout and reads each of its plugs, and no other', () => {
    expect(layout).toBeDefined()
    for (const tray of script.trays) expect(Object.keys(tray.readings).toSorted()).toEqual(slots.toSorted())
  })
  it('has pulls of cylinders the engine has, each in two dry pulls at least', () => {
    const { pulls } = jobOf(script)
    const dry = pulls.flatMap(pull => (pull.test === 'compression' && !pull.entry.wet ? [pull] : []))
    for (const stage of new Set(dry.map(pull => pull.stage)))
      for (const { cylinder } of layout ? slotsOf(layout) : [])
        expect(dry.filter(pull => pull.stage === stage && pull.cylinder === cylinder).length).toBeGreaterThan(
          1,
        )
    for (const pull of pulls) expect(slots).toContain('cylinder' in pull ? String(pull.cylinder) : slots[0])
  })
  it('is marked as invented and names nobody', () => {
    expect(script.engine.vehicle).toContain('invented')
    expect(script.notes).toContain('Invented demonstration job')
    expect(script.engine.vin).toBeUndefined()
    expect(writeUp(jobOf(script), defaultSettings.units, 'customer').invented).toBe(true)
  })
  it('has no reading that cannot be trusted', () => {
    const doubtful = judgeAll(jobOf(script), 'as found').filter(
      one => one.about === 'reading' && one.verdict !== 'within' && one.verdict !== 'noted',
    )
    expect(doubtful).toEqual([])
  })
})

it('orchard truck: cylinder 4 alone burns oil', () => {
  expect(statesOf('orchard-truck')).toEqual(['sound', 'sound', 'sound', 'fault', 'sound', 'sound'])
  const wet = judgeAll(jobOf(scriptOf('orchard-truck')), 'as found').find(
    one => one.rule === 'wet rise' && one.cylinder === 4,
  )
  expect(wet?.why).toContain('rings, piston or bore')
})
it('harbour launch: the even bank is lean, compression even, vacuum low', () => {
  expect(statesOf('harbour-launch')).toEqual(['sound', 'watch', 'sound', 'watch', 'sound', 'watch'])
  expect(remarksOf('harbour-launch')).toContain('one bank lean')
  expect(remarksOf('harbour-launch')).toContain('vacuum, idle')
})
it('stand-by generator: 3 and 5 side by side', () => {
  expect(statesOf('standby-generator')).toEqual([
    'sound',
    'sound',
    'fault',
    'sound',
    'fault',
    'sound',
    'sound',
    'sound',
  ])
  const job = jobOf(scriptOf('standby-generator'))
  const gasket = engineRemarks(job, 'as found').find(one => one.kind === 'neighbours low')
  expect(gasket).toMatchObject({ cylinders: [3, 5] })
  expect(gasket?.text).toContain('Oil helped neither')
  const weak = judgeAll(job, 'as found').filter(one => one.test === 'balance' && one.verdict === 'outside')
  expect(weak.map(one => one.cylinder)).toEqual([3, 5])
})
it('delivery van: oil in one well, no fault of the cylinder, and the repair is proven', () => {
  expect(statesOf('delivery-van')).toEqual(['sound', 'sound', 'watch', 'sound'])
  expect(statesOf('delivery-van', 'after repair')).toEqual(['sound', 'sound', 'sound', 'sound'])
  expect(writeUp(jobOf(scriptOf('delivery-van')), defaultSettings.units, 'shop').proof[0]).toMatch(/^Proven:/)
})
it('library bus: all dark, cylinder 2 fouled and weak', () => {
  expect(statesOf('library-bus')).toEqual(['watch', 'fault', 'watch', 'watch'])
  expect(remarksOf('library-bus')).toContain('all rich or carbon-fouled')
})
