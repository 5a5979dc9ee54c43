// One odd cylinder, seen across the tests that measure the same thing: odd in every one of them speaks of the cylinder,
// odd in one alone speaks first of that reading.
import type { TestKind } from '../job/pull-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { inWords } from './shown.ts'
import { sources } from './sources.ts'
import type { CylinderVerdict, GaugeVerdict } from './verdict.ts'

/** All of these see a cylinder that does not seal. */
const sealing: readonly TestKind[] = ['compression', 'leak-down', 'balance']

/** Lacking the other tests' agreement, what could still make the one test right. */
const elseOf: Readonly<Partial<Record<TestKind, string>>> = {
  compression: 'a valve that opens too little (cam lobe, lifter) or late closing reads low and still seals',
  'leak-down':
    'a ring or valve may leak at rest and seal while turning, or the piston was not at top dead centre',
  balance: 'a cylinder that seals and is weak points to spark or fuel',
}

/** At most one verdict a cylinder; none with fewer than two such tests of it. `verdicts`: all of one stage. */
export function oddOnes(verdicts: readonly GaugeVerdict[], stage: Stage): CylinderVerdict[] {
  const judged = verdicts.filter(
    (one): one is CylinderVerdict =>
      one.cylinder !== undefined &&
      sealing.includes(one.test) &&
      one.about !== 'reading' &&
      one.verdict !== 'noted',
  )
  const cylinders = [...new Set(judged.map(one => one.cylinder))].toSorted((a, b) => a - b)
  /** Found odd by a test of spark, fuel or misfires: then one sealing test does not stand alone. */
  const oddElsewhere = new Set(
    verdicts
      .filter(one => !sealing.includes(one.test) && one.about !== 'reading' && one.verdict === 'outside')
      .map(one => one.cylinder),
  )
  return cylinders.flatMap(cylinder => ofCylinder(cylinder, judged, stage, oddElsewhere.has(cylinder)))
}

function ofCylinder(
  cylinder: number,
  judged: readonly CylinderVerdict[],
  stage: Stage,
  oddElsewhere: boolean,
): CylinderVerdict[] {
  const calls = sealing.flatMap(test => {
    const mine = judged.filter(one => one.cylinder === cylinder && one.test === test)
    if (mine.length === 0) return []
    const odd = mine.some(one => one.verdict === 'outside')
    // Only a test that clears the cylinder altogether contradicts another.
    return odd || mine.every(one => one.verdict === 'within') ? [{ test, odd }] : []
  })
  const odd = calls.filter(one => one.odd).map(one => one.test)
  const sound = calls.filter(one => !one.odd).map(one => one.test)
  const [first] = odd
  if (first === undefined || odd.length + sound.length < 2) return []
  const base = {
    test: first,
    cylinder,
    stage,
    value: odd.length,
    unit: `of ${calls.length} tests`,
    limit: 'tests that see the same fault agree',
    source: sources.practice,
    about: 'reading',
  } as const
  if (sound.length === 0)
    return [
      {
        ...base,
        rule: 'odd in every test',
        verdict: 'noted',
        why: `${inWords(odd)} agree on cylinder ${cylinder}: it is the cylinder and not one bad reading.`,
      },
    ]
  if (odd.length > 1 || oddElsewhere) return []
  const other = elseOf[first]
  return [
    {
      ...base,
      rule: 'odd in one test only',
      verdict: 'watch',
      why: `Only ${first} finds cylinder ${cylinder} odd; ${inWords(sound)} finds nothing. Repeat ${first} before acting on it${other === undefined ? '.' : `; if it stays, ${other}.`}`,
    },
  ]
}
