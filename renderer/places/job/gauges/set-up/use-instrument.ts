// The tester that the next pulls name: chosen here, or else the one last used for this kind in the job.
import { useState } from 'react'
import type { Instrument } from '../../../../../shared/gauges/instrument-schema.ts'
import type { TestKind } from '../../../../../shared/job/pull-schema.ts'
import { useJobPage } from '../../job-context.ts'
import { testerOf } from '../test-groups.ts'

export type InstrumentChoice = {
  kind: Instrument['kind'] | undefined
  known: readonly Instrument[]
  /** Undefined: none is named. */
  chosen: string | undefined
  /** Null names none. */
  choose: (id: string | null) => void
}

export function useInstrument(test: TestKind): InstrumentChoice {
  const { job } = useJobPage()
  const [picked, setPicked] = useState<Readonly<Record<string, string | null>>>({})
  const kind = testerOf[test]
  const known = (job.instruments ?? []).filter(one => one.kind === kind)
  const ids = new Set(known.map(({ id }) => id))
  const lastUsed = job.pulls.findLast(pull => pull.instrument !== undefined && ids.has(pull.instrument))
  const choice = kind === undefined ? null : picked[kind]
  const chosen = choice === undefined ? lastUsed?.instrument : (choice ?? undefined)
  return {
    kind,
    known,
    chosen: chosen !== undefined && ids.has(chosen) ? chosen : undefined,
    choose: id => {
      if (kind !== undefined) setPicked(now => ({ ...now, [kind]: id }))
    },
  }
}
