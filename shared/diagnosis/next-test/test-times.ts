// Minutes of the tests and of what has to be opened for them. All of it common practice by our own estimate, for an engine
// that is easy to reach and a practised hand; a shop edits it. What no test changes (service information, cautions) is not here.
import type { TestKind } from '../../job/pull-schema.ts'
import type { SetUpTime, TestTime } from './shop-time.ts'

/** Opened or fitted once. The engine counts as warm when it was driven in; a cold one has to be run first. */
export const setUpTimes = {
  'plugs out': { minutes: 5, eachPlug: 5 },
  'engine warm': { minutes: 12 },
  'vacuum gauge on': { minutes: 5 },
  'fuel gauge on': { minutes: 15 },
  'scan tool on': { minutes: 4 },
  'current clamp on': { minutes: 4 },
  'ignition reached': { minutes: 6 },
  'injectors reached': { minutes: 10 },
  'cam cover off': { minutes: 40 },
  'head off': { minutes: 300 },
} satisfies Record<string, SetUpTime>

type SetUp = keyof typeof setUpTimes
export type PlannableTest =
  | Exclude<TestKind, 'swap' | 'observation'>
  | 'compression wet'
  | 'swap plug'
  | 'swap coil'
  | 'swap lead'
  | 'swap injector'
  | 'known-good part'

const time = (minutes: number, bother: number, ...needs: SetUp[]): TestTime => ({ minutes, bother, needs })

/**
 * Of one cylinder where the test is of a cylinder. Bother: cranking with plugs out drains the battery and wants fuel and spark
 * disabled; a cylinder cut out sends fuel into the converter; opening the fuel line and bare high voltage call for care.
 */
export const testTimes: Readonly<Record<PlannableTest, TestTime>> = {
  compression: time(3, 1, 'engine warm', 'plugs out'),
  'compression wet': time(4, 1, 'engine warm', 'plugs out'),
  'running compression': time(8, 6, 'engine warm'),
  'leak-down': time(10, 2, 'engine warm', 'plugs out'),
  balance: time(2, 2, 'engine warm'),
  vacuum: time(5, 0, 'engine warm', 'vacuum gauge on'),
  spark: time(4, 4, 'ignition reached'),
  resistance: time(3, 0, 'ignition reached'),
  'fuel pressure': time(6, 3, 'fuel gauge on'),
  'injector balance': time(4, 2, 'fuel gauge on', 'scan tool on'),
  injector: time(4, 0, 'injectors reached'),
  trims: time(6, 0, 'engine warm', 'scan tool on'),
  'misfire counts': time(2, 0, 'engine warm', 'scan tool on'),
  'trouble codes': time(2, 0, 'scan tool on'),
  'mode 06': time(4, 0, 'scan tool on'),
  'relative compression': time(5, 0, 'current clamp on'),
  'crank speed': time(5, 0, 'current clamp on'),
  'swap plug': time(6, 1, 'plugs out'),
  'swap coil': time(8, 0, 'ignition reached'),
  'swap lead': time(6, 0, 'ignition reached'),
  'swap injector': time(25, 4, 'injectors reached'),
  'known-good part': time(12, 2),
}
