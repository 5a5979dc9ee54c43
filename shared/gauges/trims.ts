// Fuel trims by bank: each state against the shop's limit. They mean something only in closed loop with the engine warm.
import type { Job } from '../job/job-schema.ts'
import type { Stage } from '../job/tray-schema.ts'
import { againstMaximum } from './calling.ts'
import { falseLean } from './false-lean.ts'
import type { Gauge } from './gauge.ts'
import { ruleSet } from './rule-sets.ts'
import { inWords, percentWords, round } from './shown.ts'
import { type BankTrims, bankPattern, bankAgainstBank } from './trim-pattern.ts'
import { type TrimValue, trimValues } from './trim-values.ts'
import type { GaugeVerdict } from './verdict.ts'

/** Verdicts on banks, none on a cylinder; the bank stands in the rule. */
export function judgeTrims(job: Job, stage: Stage): GaugeVerdict[] {
  const rule = ruleSet('trims', job)
  const lean = falseLean(job, stage)
  const called = trimValues(job, stage).map(value => ({ value, verdict: call(value, rule, lean, stage) }))
  const banks = [...new Set(called.map(one => one.value.bank))].map(
    (bank): BankTrims => ({ bank, states: called.filter(one => one.value.bank === bank) }),
  )
  return [
    ...called.map(one => one.verdict),
    ...banks.flatMap(bank => bankPattern(bank, stage)),
    ...bankAgainstBank(banks, job.layout, stage),
  ]
}

type Rule = ReturnType<typeof ruleSet<'trims'>>

function call(value: TrimValue, rule: Rule, lean: readonly string[], stage: Stage): GaugeVerdict {
  const { bank, state, total, plusMinus, parts, closedLoopWarm } = value
  const base = {
    test: 'trims',
    rule: `bank ${bank} ${state === 'load' ? 'under load' : `at ${state}`}`,
    stage,
    value: round(total),
    plusMinus: round(plusMinus),
    unit: '%',
    limit: `within ${percentWords(rule.percent)} either way; a code is usual near ${percentWords(rule.codePercent)}`,
    source: rule.source,
  } as const
  const said = `${signed(total)}${parts === 'both' ? ', short and long together' : `, ${parts}: read both, they add up`}`
  if (closedLoopWarm === 'no')
    return {
      ...base,
      verdict: 'cannot be called',
      why: `${said}. Read in open loop or cold: trims say nothing there. Warm it up and repeat.`,
      about: 'reading',
    }
  const outcome = againstMaximum(Math.abs(total), plusMinus, rule.percent)
  const falsely = outcome === 'outside' && total > 0 && lean.length > 0
  return {
    ...base,
    verdict: falsely ? 'cannot be called' : outcome,
    why: `${said}: ${
      outcome === 'outside'
        ? total > 0
          ? `fuel is added, as for a lean mixture.${falsely ? ` But ${inWords(lean)}: settle that first.` : ''}`
          : 'fuel is taken off, as for a rich mixture.'
        : outcome === 'within'
          ? 'nothing to make up for.'
          : 'too near the limit: short trim swings; watch it for longer and read again.'
    }${closedLoopWarm === 'not said' ? ' Nobody said closed loop and warm: it holds only then.' : ''}`,
  }
}

const signed = (total: number): string =>
  `${total > 0 ? '+' : ''}${percentWords(total).replace('-', '\u2212')}`

export const trimsGauge: Gauge = {
  test: 'trims',
  title: 'Fuel trims',
  cautions: [
    'Engine running: exhaust extraction on, clear of fan and belts.',
    'Trims under load are read by a second person, never by the driver.',
  ],
  steps: [
    'Engine warm, closed loop. Note short and long trim of each bank at idle, then held at 2500 rpm.',
    'Positive at idle and normal at 2500: unmetered air. Positive at both: fuel delivery or air meter. Negative: leaking injector, pressure high, purge.',
    'A cylinder that does not fire, or an exhaust leak ahead of the sensor, reads falsely lean: settle those first.',
    'After the repair: clear, drive warm, trims near nought.',
  ],
  judge: judgeTrims,
}
