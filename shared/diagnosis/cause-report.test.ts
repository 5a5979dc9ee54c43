import { expect, it } from 'vitest'
import { jobWith, onePullEach } from '../gauges/testing/evidence-job.ts'
import { assess } from './assessment.ts'
import { causeReport } from './cause-report.ts'

const layout = 'i4-1342'

it('lists no cause of an engine nobody has looked at', () => {
  const { byCylinder, engine, leftOut } = causeReport(jobWith({ layout }), 'as found')
  expect([...byCylinder.values()].flat()).toEqual([])
  expect(byCylinder.size).toBe(4)
  expect(engine).toEqual([])
  expect(leftOut).toBeGreaterThan(0)
})

it('lists what the evidence raised, likeliest first, with what raised it', () => {
  const { cylinders, engine } = assess(jobWith({ layout, pulls: onePullEach([150, 88, 90, 150]) }))
  const third = cylinders.find(one => one.cylinder === 3)
  expect(third?.state).toBe('fault')
  expect(third?.causes[0]).toMatchObject({ cause: 'head gasket to neighbour', cylinders: [2, 3] })
  expect(third?.causes[0]?.evidence[0]?.from).toBe('compression')
  expect(third?.causes[0]?.evidence[0]?.weight).toBeGreaterThan(1)
  const chances = third?.causes.map(one => one.probability) ?? []
  expect(chances).toEqual(chances.toSorted((a, b) => b - a))
  expect(engine.leftOut).toBeLessThan(0.001)
})

it('what was measured before a repair says nothing of the engine after it', () => {
  const job = jobWith({ layout, pulls: onePullEach([150, 88, 90, 150]) })
  expect([...causeReport(job, 'after repair').byCylinder.values()].flat()).toEqual([])
})
