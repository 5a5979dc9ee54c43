// What of the set-up belongs to which test, as choices and numbers over the job's conditions.
import type { TestConditions } from '../../../../../shared/gauges/conditions-schema.ts'
import type { TestKind } from '../../../../../shared/job/pull-schema.ts'
import { readCrankingRpm, readVolts } from '../entry/read-number.ts'

type Key = keyof TestConditions

type SetUpChoice = { key: Key; title: string; options: readonly { text: string; sets: TestConditions }[] }
type SetUpNumber = {
  key: 'batteryVoltsBefore' | 'batteryVoltsAfter' | 'crankingRpm'
  title: string
  unit: string
  parse: (text: string) => number | null
}

const engine: SetUpChoice = {
  key: 'engine',
  title: 'Engine',
  options: [
    { text: 'warm', sets: { engine: 'warm' } },
    { text: 'cold', sets: { engine: 'cold' } },
  ],
}
const throttle: SetUpChoice = {
  key: 'throttle',
  title: 'Throttle',
  options: [
    { text: 'open', sets: { throttle: 'open' } },
    { text: 'closed', sets: { throttle: 'closed' } },
  ],
}
const plugs: SetUpChoice = {
  key: 'plugs',
  title: 'Plugs',
  options: [
    { text: 'all out', sets: { plugs: 'all out' } },
    { text: 'only one out', sets: { plugs: 'only the tested one out' } },
  ],
}
const disabled: SetUpChoice = {
  key: 'disabled',
  title: 'Ignition and injection',
  options: [
    { text: 'disabled', sets: { disabled: true } },
    { text: 'not disabled', sets: { disabled: false } },
  ],
}
const idleControl: SetUpChoice = {
  key: 'idleControl',
  title: 'Idle control',
  options: [
    { text: 'fixed', sets: { idleControl: 'fixed' } },
    { text: 'active', sets: { idleControl: 'active' } },
  ],
}

export const setUpChoices: Partial<Record<TestKind, readonly SetUpChoice[]>> = {
  compression: [engine, throttle, plugs, disabled],
  'relative compression': [engine, throttle, disabled],
  'running compression': [engine],
  'leak-down': [engine],
  balance: [engine, idleControl],
  'crank speed': [engine, idleControl],
  vacuum: [engine, idleControl],
}

const cranking: readonly SetUpNumber[] = [
  { key: 'batteryVoltsBefore', title: 'Battery before', unit: 'V', parse: readVolts },
  { key: 'batteryVoltsAfter', title: 'Battery after', unit: 'V', parse: readVolts },
  { key: 'crankingRpm', title: 'Cranking speed', unit: 'rpm', parse: readCrankingRpm },
]

export const setUpNumbers: Partial<Record<TestKind, readonly SetUpNumber[]>> = {
  compression: cranking,
  'relative compression': cranking,
}
