// What can be wrong with a leak-down reading itself: misread gauges, a leaking adapter, a cold engine, other testers.
import type { TestConditions } from './conditions-schema.ts'
import type { LeakDownValue } from './leak-down-values.ts'
import { inWords } from './shown.ts'
import { sources } from './sources.ts'
import type { Stage } from '../job/tray-schema.ts'
import type { CylinderVerdict } from './verdict.ts'

/** Cylinders that one tester, orifice and pressure was used on. */
export function alikeTested(values: readonly LeakDownValue[]): LeakDownValue[][] {
  const groups = new Map<string, LeakDownValue[]>()
  const pressures = values.flatMap(one => one.pressures)
  const onePressure = pressures.length === 0 || Math.max(...pressures) <= 1.1 * Math.min(...pressures)
  for (const one of values) {
    const pressure = onePressure ? '' : one.pressures.map(psi => Math.round(psi / 10)).join(' ')
    const key = `${one.testers.join(' / ')} | ${pressure}`
    groups.set(key, [...(groups.get(key) ?? []), one])
  }
  return [...groups.values()]
}

export function leakDownReadings(
  values: readonly LeakDownValue[],
  conditions: TestConditions,
  stage: Stage,
): CylinderVerdict[] {
  const groups = alikeTested(values)
  const says = (
    one: LeakDownValue,
    rule: string,
    value: number,
    unit: string,
    limit: string,
    why: string,
  ) => ({
    test: 'leak-down' as const,
    rule,
    cylinder: one.cylinder,
    stage,
    value,
    unit,
    verdict: 'watch' as const,
    limit,
    why,
    source: sources.leakPractice,
    about: 'reading' as const,
  })
  return [
    ...values
      .filter(one => one.misread > 0)
      .map(one =>
        says(
          one,
          'misread',
          one.misread,
          one.misread === 1 ? 'pull' : 'pulls',
          'what is held cannot be more than what goes in',
          'Pressure held above the pressure in, or none in: left out. Look at both gauges and test again.',
        ),
      ),
    ...values
      .filter(one => one.escapes.includes('plug adapter'))
      .map(one =>
        says(
          one,
          'adapter',
          one.percent ?? 0,
          '%',
          'the adapter must be tight',
          'Air escapes at the plug adapter: seal it and test again before calling the cylinder.',
        ),
      ),
    ...values
      .filter(one => one.cold || conditions.engine === 'cold')
      .map(one =>
        says(
          one,
          'engine cold',
          one.percent ?? 0,
          '%',
          'engine warm, tested soon after stopping',
          'Tested cold: piston and rings seal less. Warm the engine and test again before condemning.',
        ),
      ),
    ...(groups.length < 2 ? [] : groups).flatMap(group =>
      group.map(one =>
        says(
          one,
          'one tester',
          one.testers.length,
          one.testers.length === 1 ? 'tester' : 'testers',
          'the percentage belongs to tester, orifice and pressure: other ones are not compared',
          group.length === 1
            ? 'No other cylinder was tested with the same tester, orifice and pressure.'
            : `Compared only within cylinders ${inWords(group.map(each => each.cylinder))}.`,
        ),
      ),
    ),
  ]
}
