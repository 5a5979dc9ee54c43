// The rules an engine layout must keep that a schema cannot say: who is where, once each, and a whole firing cycle.
import type { Layout } from './layout-schema.ts'

export type LayoutProblem = {
  field: 'banks' | 'firingOrder' | 'intervalsDeg' | 'arrangement'
  message: string
}

const list = (numbers: readonly number[]): string => numbers.join(', ')

const repeated = (numbers: readonly number[]): number[] => [
  ...new Set(numbers.filter((number, at) => numbers.indexOf(number) !== at)),
]

/** Everything wrong with a layout, each as a sentence that says what to change; empty when it can be used. */
export function checkLayout(layout: Layout): LayoutProblem[] {
  const problems: LayoutProblem[] = []
  const say = (field: LayoutProblem['field'], message: string) => problems.push({ field, message })
  const cylinders = layout.banks.flatMap(bank => bank.cylinders)
  const count = cylinders.length

  const twice = repeated(cylinders)
  if (twice.length > 0)
    say('banks', `Cylinder ${list(twice)} stands in the banks twice: each cylinder has one place.`)
  const wanted = Array.from({ length: count }, (_, i) => i + 1)
  const absent = wanted.filter(number => !cylinders.includes(number))
  if (twice.length === 0 && absent.length > 0)
    say('banks', `Number the cylinders from 1 to ${count} without a gap: ${list(absent)} is missing.`)

  const firedTwice = repeated(layout.firingOrder)
  if (firedTwice.length > 0)
    say('firingOrder', `Cylinder ${list(firedTwice)} fires twice: each fires once a cycle.`)
  const notFired = cylinders.filter(number => !layout.firingOrder.includes(number))
  if (notFired.length > 0)
    say('firingOrder', `Cylinder ${list([...new Set(notFired)])} is missing from the firing order.`)
  const foreign = layout.firingOrder.filter(number => !cylinders.includes(number))
  if (foreign.length > 0)
    say('firingOrder', `The firing order names ${list(foreign)}, which stands in no bank.`)

  if (layout.intervalsDeg.length !== layout.firingOrder.length)
    say('intervalsDeg', `Give one firing interval a cylinder: ${layout.firingOrder.length} are needed.`)
  const cycle = layout.intervalsDeg.reduce((sum, interval) => sum + interval, 0)
  if (Math.abs(cycle - 720) > 1)
    say('intervalsDeg', `The firing intervals must add up to 720°; they give ${cycle}°.`)

  if (layout.arrangement === 'inline' && layout.banks.length !== 1)
    say('arrangement', 'An inline engine has one bank.')
  if (layout.arrangement !== 'inline' && layout.banks.length !== 2)
    say('arrangement', 'A vee or flat engine has two banks.')
  return problems
}
