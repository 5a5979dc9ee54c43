// Search finds what is there, whatever its case and accents, and nothing that is not.
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { JobSummary } from '../contract/summary-schema.ts'
import { folded, searchSummaries } from './search.ts'

const summary = (more: Partial<JobSummary>): JobSummary => ({
  id: 'a',
  rev: 1,
  createdAt: '2026-03-02T09:00:00Z',
  updatedAt: '2026-03-02T09:00:00Z',
  archived: false,
  demo: false,
  repaired: false,
  complaint: '',
  vehicle: '',
  vin: '',
  technician: '',
  layoutName: '',
  states: [],
  photos: [],
  ...more,
})

const van = summary({
  id: 'van',
  vehicle: 'Lieferwagen Müller',
  complaint: 'Misfires when cold',
  vin: 'AAA123',
})
const boat = summary({
  id: 'boat',
  vehicle: 'Harbour launch',
  technician: 'Zoë Łęcka',
  layoutName: 'Inline six',
})
const truck = summary({ id: 'truck', vehicle: 'Straße truck', createdAt: '2025-11-30T23:00:00Z' })
const all = [van, boat, truck]
const found = (text: string) => searchSummaries(all, text).map(({ id }) => id)

describe('search', () => {
  it('gives everything, in the order given, where nothing is asked', () => {
    expect(searchSummaries(all, '')).toEqual(all)
    expect(searchSummaries(all, '  \t ')).toEqual(all)
  })

  it.each([
    ['muller', ['van']],
    ['MÜLLER', ['van']],
    ['Mu\u0308ller', ['van']],
    ['zoe lecka', ['boat']],
    ['strasse', ['truck']],
    ['STRASSE', ['truck']],
    ['straße', ['truck']],
    ['aaa12', ['van']],
    ['six harbour', ['boat']],
    ['2025-11', ['truck']],
    ['cold harbour', []],
    ['misfires  when', ['van']],
    ['er', ['van']],
    ['.*', []],
  ])('finds %j in %j', (text, ids) => {
    expect(found(text)).toEqual(ids)
  })

  it('does not join the end of one field with the start of the next', () => {
    expect(searchSummaries([summary({ vehicle: 'Red', complaint: 'dish' })], 'reddish')).toEqual([])
  })

  it('sees a changed job under its new summary', () => {
    expect(found('launch')).toEqual(['boat'])
    expect(searchSummaries([{ ...boat, vehicle: 'Ferry' }], 'launch')).toEqual([])
  })

  it('finds every piece of a word, in either case, and folding twice changes nothing', () => {
    const word = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 })
    fc.assert(
      fc.property(word, fc.nat(12), fc.nat(12), (text, a, b) => {
        const letters = [...new Intl.Segmenter().segment(text)].map(({ segment }) => segment)
        const part = letters.slice(Math.min(a, b), Math.max(a, b)).join('')
        const one = summary({ vehicle: text })
        expect(searchSummaries([one], text)).toEqual([one])
        expect(searchSummaries([one], part)).toEqual([one])
        expect(searchSummaries([one], text.toUpperCase())).toEqual([one])
        expect(folded(folded(text))).toBe(folded(text))
      }),
    )
  })
})
