// What a gauge verdict says of its cylinder, as evidence.
import { withUnit } from '../units/format.ts'
import type { GaugeVerdict, Verdict } from '../gauges/verdict.ts'
import type { Evidence } from './evidence.ts'

/** A number too near its limit is neither sound nor a fault. */
const stateOf: Readonly<Record<Exclude<Verdict, 'noted'>, Evidence['state']>> = {
  within: 'sound',
  watch: 'watch',
  outside: 'fault',
  'cannot be called': 'watch',
}

const plainOf: Readonly<Partial<Record<GaugeVerdict['test'], Readonly<Record<Evidence['state'], string>>>>> =
  {
    compression: {
      sound: 'The compression of this cylinder compares well with the others.',
      watch: 'The compression of this cylinder is on the edge of what is accepted.',
      fault: 'The compression of this cylinder is lower than it should be.',
    },
    balance: {
      sound: 'This cylinder does its share of the work.',
      watch: 'This cylinder may do less than its share of the work.',
      fault: 'This cylinder does too little work or none.',
    },
    'running compression': {
      sound: 'This cylinder breathes like the others with the engine running.',
      watch: 'This cylinder may breathe less well than the others with the engine running.',
      fault: 'This cylinder does not breathe as it should with the engine running.',
    },
    'leak-down': {
      sound: 'This cylinder holds air pressure as it should.',
      watch: 'This cylinder loses a little more air than is usual.',
      fault: 'This cylinder loses more air than it should.',
    },
  }

const plainWords: Readonly<Record<Evidence['state'], string>> = {
  sound: 'This check of the cylinder found nothing wrong.',
  watch: 'This check of the cylinder was on the edge of what is accepted.',
  fault: 'This check of the cylinder found a fault.',
}

/** Value with its interval: "118 ± 2.5 psi". */
export const valueWords = ({ value, plusMinus, unit }: GaugeVerdict): string =>
  plusMinus
    ? `${withUnit(String(value), '\u00b1')}\u00a0${withUnit(String(plusMinus), unit)}`
    : withUnit(String(value), unit)

/** Verdicts that only note something, or speak of the reading itself, are no evidence on the cylinder. */
export function gaugeEvidence(verdicts: readonly GaugeVerdict[], cylinder: number): Evidence[] {
  return verdicts.flatMap(one => {
    if (one.cylinder !== cylinder || one.verdict === 'noted' || one.about === 'reading') return []
    const state = stateOf[one.verdict]
    return [
      {
        from: one.test,
        state,
        text: `${one.rule} ${valueWords(one)}: ${one.verdict} (${one.limit}). ${one.why}`,
        headline: `${one.test}, ${one.rule} ${valueWords(one)}: ${one.verdict}`,
        plain: plainOf[one.test]?.[state] ?? plainWords[state],
        next: '',
        source: one.source,
      },
    ]
  })
}
