// The rules an engine layout must keep that a schema cannot say: who is where, once each, and a whole firing cycle.
import type { Layout } from './layout-schema.ts'

export type LayoutProblem = {
  field: 'banks' | 'firingOrder' | 'intervalsDeg' | 'arrangement'
  message: string
}

/** The published intervals are rounded: a whole cycle may come out a little off. */
const cycleTolerance = 1

const list = (numbers: readonly number[]): string => [...new Set(numbers)].join(', ')

const repeated = <T>(items: readonly T[]): T[] => [
  ...new Set(items.filter((item, at) => items.indexOf(item) !== at)),
]

const when = (wrong: boolean, message: string): string[] => (wrong ? [message] : [])

function bankFaults({ banks }: Layout): string[] {
  const cylinders = banks.flatMap(bank => bank.cylinders)
  const twice = repeated(cylinders)
  const absent = cylinders.map((_, i) => i + 1).filter(number => !cylinders.includes(number))
  return [
    ...banks
      .filter(bank => bank.cylinders.length === 0)
      .map(bank => `Bank "${bank.name}" has no cylinder: give it one or take the bank away.`),
    ...repeated(banks.map(bank => bank.name.trim())).map(
      name => `More than one bank is named "${name}": name them apart.`,
    ),
    ...when(
      twice.length > 0,
      `Cylinder ${list(twice)} stands in the banks more than once: give each cylinder one place.`,
    ),
    ...when(
      twice.length === 0 && absent.length > 0,
      `Number the cylinders from 1 to ${cylinders.length} without a gap: ${list(absent)} is missing.`,
    ),
  ]
}

function orderFaults({ banks, firingOrder }: Layout): string[] {
  const cylinders = banks.flatMap(bank => bank.cylinders)
  const twice = repeated(firingOrder)
  const silent = cylinders.filter(number => !firingOrder.includes(number))
  const foreign = firingOrder.filter(number => !cylinders.includes(number))
  return [
    ...when(
      twice.length > 0,
      `Cylinder ${list(twice)} is in the firing order more than once: each fires once a cycle.`,
    ),
    ...when(silent.length > 0, `Cylinder ${list(silent)} is missing from the firing order: add it.`),
    ...when(
      foreign.length > 0,
      `The firing order names ${list(foreign)}, which stands in no bank: correct one or the other.`,
    ),
  ]
}

function intervalFaults({ firingOrder, intervalsDeg }: Layout): string[] {
  const cycle = intervalsDeg.reduce((sum, interval) => sum + interval, 0)
  return [
    ...when(
      intervalsDeg.length !== firingOrder.length,
      `Give one firing interval for each cylinder: ${firingOrder.length} are needed, ${intervalsDeg.length} are there.`,
    ),
    ...when(
      !(Math.abs(cycle - 720) <= cycleTolerance),
      `The firing intervals must add up to 720°; they give ${Number(cycle.toFixed(1))}°.`,
    ),
  ]
}

function arrangementFaults({ arrangement, banks }: Layout): string[] {
  const { length } = banks
  return arrangement === 'inline'
    ? when(length !== 1, `An inline engine has one bank; this has ${length}.`)
    : when(length !== 2, `A vee or flat engine has two banks; this has ${length}.`)
}

/** Everything wrong with a layout, each as a sentence that says what to change; empty when it can be used. */
export function checkLayout(layout: Layout): LayoutProblem[] {
  const named = (field: LayoutProblem['field'], messages: string[]): LayoutProblem[] =>
    messages.map(message => ({ field, message }))
  return [
    ...named('banks', bankFaults(layout)),
    ...named('firingOrder', orderFaults(layout)),
    ...named('intervalsDeg', intervalFaults(layout)),
    ...named('arrangement', arrangementFaults(layout)),
  ]
}
