// How the rail holds its pressure after the pump stops: the fall in so many minutes, against a typed limit or one maker's.
import type { Specification } from './specification-schema.ts'
import { againstMaximum, type Call } from './calling.ts'
import { fuelPsi } from './fuel-reading.ts'
import { tidy } from './middle.ts'
import { pressureShown, pressureWords, round, type ShownUnits } from './shown.ts'
import { sources } from './sources.ts'
import { withUnit } from '../units/format.ts'
import type { GaugeVerdict, Verdict } from './verdict.ts'

/** Pressure so many minutes after stopping; `plusMinus` is that of a difference. Psi. */
export type Held = { minutes: number; psi: number; plusMinus: number }

/** One maker's limit, not everybody's. */
const oneMaker = { fallPsi: fuelPsi({ value: 34, unit: 'kPa' }), minutes: 1 } as const

type Setting = {
  stage: GaugeVerdict['stage']
  units: ShownUnits
  specification: Specification | undefined
}

/** `start` is the pressure when the pump stopped, psi; undefined when nobody read it. */
export function judgeHold(
  held: readonly Held[],
  start: number | undefined,
  { stage, units, specification }: Setting,
): GaugeVerdict[] {
  const words = (psi: number) => pressureWords(psi, units)
  const typedFall = specification?.fuelPressureFall
  const typed = typedFall !== undefined
  const most = typedFall ? fuelPsi(typedFall) : oneMaker.fallPsi
  const within = typed ? (specification?.holdMinutes ?? 1) : oneMaker.minutes
  const limit = typed
    ? `falls at most ${words(most)} in ${minuteWords(within)}`
    : `falls at most ${words(most)} in ${minuteWords(within)} by one maker; the service information decides`
  return held
    .filter(one => one.minutes > 0)
    .map(one => {
      const base = {
        test: 'fuel pressure',
        rule: `hold after ${minuteWords(one.minutes)}`,
        stage,
        limit,
      } as const
      const source = typed ? sources.typed : 'General Motors injector balance test pages (1999-2010)'
      if (start === undefined)
        return {
          ...base,
          ...pressureShown(one.psi, units),
          verdict: 'noted',
          why: `${words(one.psi)} left; read it with the pump just stopped too, or a fall cannot be told.`,
          source,
        }
      const fall = tidy(start - one.psi)
      const call = callFall(one, fall, most, within)
      return {
        ...base,
        ...pressureShown(fall, units),
        plusMinus: pressureShown(one.plusMinus, units).value,
        verdict: typed ? call : general[call],
        why: `From ${words(start)} to ${words(one.psi)} in ${minuteWords(one.minutes)}. ${whyOf(call, one.minutes, within)}`,
        source,
      }
    })
}

/** The pressure only falls: early enough proves too much, late enough proves little enough. */
function callFall({ minutes, plusMinus }: Held, fall: number, most: number, within: number): Call {
  const call = againstMaximum(fall, plusMinus, most)
  if (call === 'outside' && minutes > within) return 'cannot be called'
  return call === 'within' && minutes < within ? 'cannot be called' : call
}

const general: Readonly<Record<Call, Verdict>> = {
  within: 'noted',
  outside: 'watch',
  'cannot be called': 'cannot be called',
}

const whyOf = (call: Call, minutes: number, within: number): string =>
  call === 'outside'
    ? 'It leaks back or into a cylinder: check valve of the pump, regulator, or an injector. Shut feed and return off one after the other to tell, by the service information; read the plugs for a wet one.'
    : call === 'within'
      ? 'It holds.'
      : minutes === within
        ? 'Too near the limit for this gauge.'
        : `Read it ${minuteWords(within)} after stopping: that is when the limit speaks.`

const minuteWords = (minutes: number): string => withUnit(String(round(minutes, 2)), 'min')
