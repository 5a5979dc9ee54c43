// Search folds case and accents and wants every word.
import { expect, it } from 'vitest'
import type { JobSummary } from '../contract/summary-schema.ts'
import { searchSummaries } from './search.ts'

const summary = (id: string, vehicle: string, complaint: string): JobSummary => ({
  id,
  rev: 1,
  createdAt: '2026-03-02T09:14:00Z',
  updatedAt: '2026-03-02T09:14:00Z',
  archived: false,
  demo: false,
  repaired: false,
  complaint,
  vehicle,
  vin: '',
  technician: '',
  layoutName: 'Inline four',
  states: [],
  photos: [],
})
const jobs = [
  summary('a', 'Camión de reparto', 'Humo azul'),
  summary('b', 'Orchard truck', 'Blue smoke, rough idle'),
]
const found = (text: string) => searchSummaries(jobs, text).map(one => one.id)

it('finds by all words, without regard to case and accents', () => {
  expect(found('')).toEqual(['a', 'b'])
  expect(found('CAMION humo')).toEqual(['a'])
  expect(found('smoke orch')).toEqual(['b'])
  expect(found('2026-03 inline')).toEqual(['a', 'b'])
  expect(found('smoke van')).toEqual([])
})
