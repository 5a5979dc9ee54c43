// Fuel trims: short and long together for each bank and state, with what spoils them.
import { conditionsOf, validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import type { TrimsEntry } from './fuel-entries.ts'
import { median, rangeOf, tidy } from './middle.ts'

export type TrimValue = {
  bank: number
  state: TrimsEntry['state']
  /** Short plus long, percent; positive adds fuel. */
  total: number
  plusMinus: number
  parts: 'both' | 'short only' | 'long only'
  /** "no" when somebody said open loop or cold; "not said" when nobody said. */
  closedLoopWarm: 'yes' | 'no' | 'not said'
}

/** Short trim swings while it is read: one percent either way is our figure. */
const swing = 1

/** By bank, idle before 2500 rpm before load. Entries without any trim are left out. */
export function trimValues(job: Job, stage: Stage): TrimValue[] {
  const entries = validPulls(job, 'trims', stage)
    .map(pull => pull.entry)
    .filter(entry => entry.shortTerm !== undefined || entry.longTerm !== undefined)
  const conditions = conditionsOf(job, 'trims', stage)
  const warm = conditions.engine === undefined ? job.circumstances.engineWarm : conditions.engine === 'warm'
  const banks = [...new Set(entries.map(entry => entry.bank))].toSorted((a, b) => a - b)
  return banks.flatMap(bank =>
    states.flatMap(state =>
      valueOf(
        entries.filter(entry => entry.bank === bank && entry.state === state),
        warm,
      ),
    ),
  )
}

const states: readonly TrimsEntry['state'][] = ['idle', '2500 rpm', 'load']

function valueOf(entries: readonly TrimsEntry[], warm: boolean | undefined): TrimValue[] {
  const [first] = entries
  if (first === undefined) return []
  const totals = entries.map(({ shortTerm = 0, longTerm = 0 }) => tidy(shortTerm + longTerm))
  const short = entries.some(entry => entry.shortTerm !== undefined)
  const long = entries.some(entry => entry.longTerm !== undefined)
  const open = entries.some(entry => entry.closedLoop === false)
  const closed = entries.every(entry => entry.closedLoop === true)
  return [
    {
      bank: first.bank,
      state: first.state,
      total: median(totals),
      plusMinus: Math.max(swing, rangeOf(totals) / 2),
      parts: short && long ? 'both' : short ? 'short only' : 'long only',
      closedLoopWarm: open || warm === false ? 'no' : closed && warm === true ? 'yes' : 'not said',
    },
  ]
}
