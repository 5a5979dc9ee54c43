// All tests in groups, as the chooser shows them, with the tester each one is read from.
import type { Instrument } from '../../../../shared/gauges/instrument-schema.ts'
import { gauges } from '../../../../shared/gauges/gauges.ts'
import type { TestKind } from '../../../../shared/job/pull-schema.ts'

export const testGroups: readonly { title: string; tests: readonly TestKind[] }[] = [
  { title: 'Engine', tests: ['vacuum'] },
  { title: 'Cylinder work', tests: ['balance', 'crank speed', 'relative compression'] },
  { title: 'Sealing', tests: ['compression', 'running compression', 'leak-down'] },
  { title: 'Ignition', tests: ['spark', 'resistance'] },
  { title: 'Fuel', tests: ['fuel pressure', 'injector balance', 'injector', 'trims'] },
  { title: 'Scan', tests: ['misfire counts', 'trouble codes', 'mode 06'] },
  { title: 'Swapped, seen, heard', tests: ['swap', 'observation'] },
]

/** Without a tester: speeds, swaps and observations; a recording names its own file. */
export const testerOf: Partial<Record<TestKind, Instrument['kind']>> = {
  vacuum: 'vacuum gauge',
  compression: 'compression gauge',
  'running compression': 'compression gauge',
  'leak-down': 'leak-down tester',
  spark: 'spark tester',
  resistance: 'ohmmeter',
  injector: 'ohmmeter',
  'fuel pressure': 'fuel pressure gauge',
  'injector balance': 'fuel pressure gauge',
  trims: 'scan tool',
  'misfire counts': 'scan tool',
  'trouble codes': 'scan tool',
  'mode 06': 'scan tool',
}

/** Where the title says more than a button needs. */
const shortTitles: Partial<Record<TestKind, string>> = {
  'relative compression': 'Relative compression',
  'crank speed': 'Crank speed',
  resistance: 'Resistance',
}

export const shortTitle = (test: TestKind): string => shortTitles[test] ?? testTitle(test)

/** The title it carries in the table of gauges, or its own name. */
export const testTitle = (test: TestKind): string =>
  gauges.find(one => one.test === test)?.title ?? `${test.charAt(0).toUpperCase()}${test.slice(1)}`
