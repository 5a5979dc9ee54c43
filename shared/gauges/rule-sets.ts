// The published limits of each kind, side by side, because they contradict each other. One of each kind is the shop's
// own (circumstances.rules); a limit typed from the vehicle's service information wins over all of them.
import type { Job } from '../job/job-schema.ts'
import type { RuleChoice } from './rule-choice-schema.ts'

export type RuleKind = keyof RuleChoice

/** What a rule set of each kind says, in the unit it was published in. */
type RuleNumbers = {
  /** Highest less lowest, psi. */
  compressionSpread: { psi: number }
  /** Least percent of the highest cylinder or of the average of all, and a floor in psi that no cylinder goes under. */
  compressionShare: { percent: number; of: 'highest' | 'average'; floorPsi?: number }
  /** Most that may leak, what is normal, and how many points cylinders may stand apart. */
  leakDown: { maximumPercent: number; normalPercent?: number; apartPoints?: number }
  /** At sea level, inHg. */
  idleVacuum: { low: number; high: number }
  /** Least at sea level with the throttle shut, inHg; from `sure` up it is enough for certain. */
  crankingVacuum: { least: number; sure: number }
  /** Either way, percent: from here it matters, and where a code is usual. */
  trims: { percent: number; codePercent: number }
  /** Pressure drop of one injector from the average of all, kPa. */
  injectorBalance: { kPa: number }
}

export type RuleSet<K extends RuleKind> = { id: string; title: string; source: string } & RuleNumbers[K]

/** The first of each kind is judged by unless the job chooses another. */
export const ruleSets: { readonly [K in RuleKind]: readonly [RuleSet<K>, ...RuleSet<K>[]] } = {
  compressionSpread: [
    { id: 'spread-20', title: 'Within 20 psi', source: 'common practice', psi: 20 },
    {
      id: 'spread-15',
      title: 'Within 15 psi (100 kPa)',
      source: 'General Motors small-car compression pages (2000-2001)',
      psi: 15,
    },
    { id: 'spread-10', title: 'Within 10 psi', source: 'US Army TM 10-3930-618-20, para 2-12', psi: 10 },
  ],
  compressionShare: [
    {
      id: 'highest-75',
      title: 'At least 75 % of the highest',
      source:
        'US Army TM 5-4210-230-14&P-1, Addendum 2; Ford compression gauge check (2010); Mazda compression page (2008)',
      percent: 75,
      of: 'highest',
    },
    {
      id: 'highest-70-floor-100',
      title: 'At least 70 % of the highest, none under 100 psi',
      source: 'General Motors compression test pages (1990-2009)',
      percent: 70,
      of: 'highest',
      floorPsi: 100,
    },
    {
      id: 'highest-90',
      title: 'Within 10 % of the highest',
      source: 'technician certification study pages',
      percent: 90,
      of: 'highest',
    },
    {
      id: 'average-80',
      title: 'Not over 20 % below the average',
      source: 'US Army TM 1-1500-204-23-1 (aviation)',
      percent: 80,
      of: 'average',
    },
  ],
  leakDown: [
    {
      id: 'leak-20',
      title: 'At most 20 %, normal 10 %, cylinders within 5 points',
      source: 'Saturn cylinder leakage page (2001); Mazda cylinder leakage page (2008): 20 %',
      maximumPercent: 20,
      normalPercent: 10,
      apartPoints: 5,
    },
    {
      id: 'leak-25',
      title: 'At most 25 % (60 held of 80)',
      source: 'Dodge cylinder leakage pages (2002); FAA AC 43.13-1B, para 8-14: over 25 % suspect',
      maximumPercent: 25,
    },
    {
      id: 'leak-30',
      title: 'Trouble over 30 %, good to 10 %',
      source: 'technician certification study pages',
      maximumPercent: 30,
      normalPercent: 10,
    },
  ],
  idleVacuum: [
    { id: 'idle-17-21', title: '17 to 21 inHg', source: 'common practice', low: 17, high: 21 },
    {
      id: 'idle-15-22',
      title: '15 to 22 inHg',
      source: 'Subaru intake manifold vacuum page; college textbook, vacuum testing task 2-04',
      low: 15,
      high: 22,
    },
    {
      id: 'idle-17-22',
      title: '17 to 22 inHg',
      source: 'older workshop vacuum charts; a metric workshop manual: 430 to 560 mmHg',
      low: 17,
      high: 22,
    },
  ],
  crankingVacuum: [
    {
      id: 'cranking-2',
      title: 'At least about 2 to 2.5 inHg',
      source: 'common practice',
      least: 2,
      sure: 2.5,
    },
    {
      id: 'cranking-3',
      title: '3 to 5 inHg, throttle shut',
      source: 'college textbook, vacuum testing task 2-04',
      least: 3,
      sure: 5,
    },
    {
      id: 'cranking-4',
      title: '4 inHg or more (emission-era engines)',
      source: 'hand vacuum pump manual (MV8500)',
      least: 4,
      sure: 4,
    },
    {
      id: 'cranking-10',
      title: '10 inHg or more (engines before emission controls)',
      source: 'hand vacuum pump manual (MV8500)',
      least: 10,
      sure: 10,
    },
  ],
  trims: [
    {
      id: 'trims-10',
      title: 'Over 10 % either way',
      source: 'technician certification study pages; articles on fuel trim',
      percent: 10,
      codePercent: 25,
    },
    {
      id: 'trims-8',
      title: 'Over 8 % either way',
      source: 'articles on fuel trim',
      percent: 8,
      codePercent: 25,
    },
    {
      id: 'trims-15',
      title: 'Over 15 % either way',
      source: 'articles on fuel trim',
      percent: 15,
      codePercent: 25,
    },
  ],
  injectorBalance: [
    {
      id: 'injector-10',
      title: 'Within 10 kPa of the average drop',
      source: 'General Motors injector balance test pages (1999-2010)',
      kPa: 10,
    },
    {
      id: 'injector-20',
      title: 'Within 20 kPa of the average drop',
      source: 'General Motors injector balance test pages (1999-2010), other pages',
      kPa: 20,
    },
  ],
}

/** The rule set of one kind that a job is judged by: the shop's choice, or the first one. */
export function ruleSet<K extends RuleKind>(
  kind: K,
  { circumstances }: Pick<Job, 'circumstances'>,
): RuleSet<K> {
  const sets: readonly [RuleSet<K>, ...RuleSet<K>[]] = ruleSets[kind]
  const chosen = circumstances.rules?.[kind]
  return sets.find(one => one.id === chosen) ?? sets[0]
}
