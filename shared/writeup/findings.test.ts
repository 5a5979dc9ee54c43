import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { UnitChoice } from '../contract/settings-schema.ts'
import {
  compression,
  cut,
  jobWith,
  onePullEach,
  reading,
  vacuum,
  voided,
} from '../gauges/testing/evidence-job.ts'
import type { Job } from '../job/job-schema.ts'
import { arbitraryJob } from '../job/testing/arbitrary-job.ts'
import { shotNamed } from '../job/testing/example-job.ts'
import { writeUp } from './findings.ts'
import { repairOrderText } from './repair-order-text.ts'

const units: UnitChoice = {
  pressure: 'psi',
  vacuum: 'inHg',
  length: 'mm',
  temperature: '°C',
  altitude: 'ft',
  distance: 'km',
}

/** Cylinder 4 low, with a wet pull on it and on a good one. */
const oily = (more: Partial<Job> = {}): Job => ({
  ...jobWith({
    pulls: [
      ...onePullEach([152, 150, 154, 118, 151, 152]),
      compression(4, 158, { wet: true }),
      compression(3, 168, { wet: true }),
      voided(compression(2, 60)),
    ],
    readings: { 4: reading('oil-wetted'), 1: reading('normal') },
    circumstances: { altitude: { value: 1150, unit: 'ft' }, engineWarm: false },
  }),
  ...more,
})
const repaired = { done: 'Honed and ringed cylinder 4.', at: '2026-03-03T09:00:00Z' }

describe('for the shop', () => {
  const report = writeUp(oily(), units, 'shop', 'Corner shop')
  it('opens with what is known, in order of weight', () => {
    expect(report.summary).toEqual([
      'Cylinder 4 shows a fault.',
      'Cylinders 1, 2, 3, 5 and 6 showed nothing wrong in what was checked.',
    ])
  })
  it('heads with what the readings depend on', () => {
    expect(report.facts).toContainEqual(['Shop', 'Corner shop'])
    expect(report.facts).toContainEqual(['Altitude', '1150\u00a0ft'])
    expect(report.facts).toContainEqual(['Engine warm', 'no'])
    expect(report.facts.map(([label]) => label)).not.toContain('Barometer')
  })
  it('gives each finding its source, what oil did, and the next check', () => {
    const lines = report.findings.find(one => one.cylinder === 4)?.lines ?? []
    expect(lines[0]).toMatch(/^plug: Oil-wetted.*\[US Army/)
    expect(
      lines.some(line =>
        line.startsWith('compression: below highest 36\u00a0\u00b1\u00a03.5\u00a0psi: outside'),
      ),
    ).toBe(true)
    expect(lines.some(line => line.startsWith('wet pull:') && line.includes('rings, piston or bore'))).toBe(
      true,
    )
    expect(lines.some(line => line.startsWith('Next: ') && line.includes('leak-down'))).toBe(true)
    expect(lines.some(line => line.startsWith('In order'))).toBe(false)
  })
  it('shows every pull, its limits with sources, and what was struck out', () => {
    const [table] = report.tables
    expect(table?.title).toBe('Compression, as found')
    expect(table?.rows[3]?.slice(0, 5)).toEqual([
      '4',
      '118\u00a0psi',
      '\u2013',
      '118\u00a0\u00b1\u00a02.5\u00a0psi',
      '158\u00a0psi',
    ])
    expect(table?.notes.join('\n')).toMatch(/20\u00a0psi below the highest cylinder \[common practice\]/)
    expect(table?.notes).toContain('Struck out, cylinder 2: misread.')
  })
  it('says what was not tested', () => {
    expect(report.notTested).toEqual([
      'Cylinder balance',
      'Vacuum',
      'Plug of cylinder 2, 3, 5 and 6 not read',
    ])
  })
  it('claims no cause that nobody stated', () => {
    expect(report.cause).toBe('')
    expect(report.repair).toEqual([])
    expect(report.proof).toEqual([])
  })
  it('carries the cautions of the tests in it, deferring to the service information', () => {
    expect(report.cautions.join(' ')).toMatch(/service information.*Disable ignition and injection/)
  })
  it('words every number in the units chosen', () => {
    const metric = JSON.stringify(writeUp(oily(), { ...units, pressure: 'kPa', altitude: 'm' }, 'shop'))
    expect(metric).not.toMatch(/\d\u00a0?psi/)
    expect(metric).toContain('814\u00a0kPa')
    expect(metric).toContain('351\u00a0m')
  })
})

describe('for the customer', () => {
  const report = writeUp(oily({ repair: repaired }), units, 'customer')
  it('says in plain words what was found and how it shows', () => {
    expect(report.findings.find(one => one.cylinder === 4)?.lines).toEqual([
      'Cylinder 4 shows a fault.',
      'There is engine oil on the firing end of the plug: oil gets into this cylinder.',
      'The compression of this cylinder is lower than it should be.',
    ])
    expect(report.tables[0]).toMatchObject({
      title: 'Compression of each cylinder',
      columns: ['Cylinder', 'As found'],
    })
  })
  it('leaves sources, rules and trade words out', () => {
    const text = [...report.summary, ...report.engine, ...report.findings.flatMap(one => one.lines)].join(' ')
    expect(text).not.toMatch(/\[|psi|share of|US Army|leak-down/)
  })
  it('says that nothing proves the repair yet', () => {
    expect(report.proof).toEqual(['Unverified: no test was repeated after the repair.'])
    expect(report.notTested).toContain('Compression not repeated after the repair')
  })
  it('does not blame the cylinder for oil in its well', () => {
    const job = jobWith({ readings: { 3: reading('normal', { oilInWell: true }) } })
    const van = writeUp(job, units, 'customer')
    expect(van.summary[0]).toBe(
      'In cylinder 3 the finding is around the outside of the plug, not inside the cylinder.',
    )
    expect(van.findings[2]?.lines[0]).toBe(
      'Cylinder 3 itself showed nothing wrong; the finding is outside it.',
    )
  })
})

describe('the repair-order text', () => {
  it('holds complaint, findings with readings and units, cause, correction and what was not tested', () => {
    const job = oily({ repair: { ...repaired, cause: 'Broken ring, cylinder 4' } })
    const text = repairOrderText(writeUp(job, units, 'shop'))
    expect(text).toBe(
      [
        'Vehicle: Invented test bed',
        'Altitude: 1150 ft',
        'Engine warm: no',
        'COMPLAINT: Shakes at idle',
        'FOUND: Cylinder 4 shows a fault. Cylinders 1, 2, 3, 5 and 6 showed nothing wrong in what was checked.',
        '  Cyl 4 (fault): Oil-wetted; compression, below highest 36 ± 3.5 psi: outside; compression, share of highest 76.6 ± 2 %: cannot be called; wet pull: rise 33.9 ± 3.5 %. Dry 118 psi, wet 158 psi. Cylinder 3, not low, rose 9 % with the same oil; this one clearly more: rings, piston or bore.',
        '  Engine: Compression: Pulled cold: rings and valves seal less. Compare with cold readings only, or warm it and pull again.',
        '  Compression as found, psi, each ±2.5 or less: 1: 152; 2: 150; 3: 154, wet 168; 4: 118, wet 158; 5: 151; 6: 152.',
        'CAUSE: Broken ring, cylinder 4',
        'CORRECTION: Honed and ringed cylinder 4.',
        'CHECKED AFTER: Unverified: no test was repeated after the repair.',
        'NOT TESTED: Cylinder balance; Vacuum; Plug of cylinder 2, 3, 5 and 6 not read; Compression not repeated after the repair.',
        '',
      ].join('\n'),
    )
  })
  it('says that no cause was stated and nothing repaired', () => {
    const text = repairOrderText(writeUp(jobWith({}), units, 'shop'))
    expect(text).toContain('CAUSE: Not stated.\nCORRECTION: No repair is recorded.\n')
    expect(text).toContain('FOUND: Nothing is recorded for cylinder 1, 2, 3, 4, 5 and 6.\n')
  })
  it('marks an invented job first of all', () => {
    expect(repairOrderText(writeUp(oily({ demo: true }), units, 'shop'))).toMatch(
      /^INVENTED DEMONSTRATION JOB\n/,
    )
  })
  it('gives running hours as hours', () => {
    const job = oily({ engine: { vehicle: 'Pump', odometer: { value: 611, unit: 'h' } } })
    expect(repairOrderText(writeUp(job, units, 'shop'))).toContain('Running hours: 611 h\n')
  })
})

describe('photos', () => {
  const shots = { good: shotNamed('1a'), bad: shotNamed('4b'), side: shotNamed('4c', { kind: 'side' }) }
  const withShots = (writeUpShots: string[] = []): Job => {
    const job = oily()
    const [tray] = job.trays
    if (!tray) throw new Error('a job has a tray')
    const slots = tray.slots.map(slot =>
      slot.cylinder === 1
        ? { ...slot, shots: [shots.good] }
        : slot.cylinder === 4
          ? { ...slot, shots: [shots.bad, shots.side] }
          : slot,
    )
    return {
      ...job,
      trays: [{ ...tray, slots, unsorted: [shotNamed('9d')] }],
      writeUp: { shots: writeUpShots },
    }
  }
  const ids = (job: Job) => writeUp(job, units, 'customer').photos.map(one => one.shotId)
  it('a customer sees the telling plug first and a good one beside it', () => {
    expect(ids(withShots())).toEqual(['4b', '4c', '1a'])
  })
  it('a person’s choice wins, in its order, unsorted ones too', () => {
    expect(ids(withShots(['9d', '1a']))).toEqual(['9d', '1a'])
  })
  it('say cylinder, kind, stage and reading', () => {
    const [first] = writeUp(withShots(), units, 'customer').photos
    expect(first).toMatchObject({
      caption: '4, end-on, as found: oil-wetted',
      alt: 'Photo of cylinder 4, end-on, as found',
    })
  })
})

it('holds for any job: no number without a value, nothing undefined, every cylinder once', () => {
  fc.assert(
    fc.property(arbitraryJob, fc.constantFrom('shop' as const, 'customer' as const), (job, audience) => {
      const report = writeUp({ ...job, complaint: 'x', engine: { vehicle: 'x' } }, units, audience)
      const own = JSON.stringify({
        ...report,
        layout: null,
        note: '',
        cause: '',
        work: '',
        repair: [],
        photos: [],
      })
      expect(own).not.toMatch(/NaN|undefined|Infinity/)
      expect(report.findings.map(one => one.cylinder)).toEqual(report.states.map(one => one.cylinder))
      expect(repairOrderText(report).endsWith('\n')).toBe(true)
    }),
    { numRuns: 40 },
  )
})

it('prints a moving needle, a cut-out and both stages', () => {
  const job = jobWith({
    pulls: [
      vacuum('idle', 15.5, { needle: 'regular drop' }),
      cut(1, [690, 600]),
      cut(2, [690, 660]),
      cut(1, [690, 600], undefined, 'after repair'),
    ],
  })
  const report = writeUp(job, units, 'shop')
  expect(report.tables.map(table => table.title)).toEqual([
    'Cylinder balance, as found',
    'Manifold vacuum, as found',
    'Cylinder balance, after repair',
  ])
  expect(report.tables[1]?.rows).toEqual([['idle', '15.5\u00a0inHg', '\u2013', 'regular drop']])
})
