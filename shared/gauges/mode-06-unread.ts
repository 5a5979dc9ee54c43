// The lines of a pasted answer that could not be read, one by one, each with why.
import type { Stage } from '../job/tray-schema.ts'
import type { Mode06 } from './mode-06-decode.ts'
import type { GaugeVerdict } from './verdict.ts'

const shownAtMost = 40

/** Readings in the order they were made; a page of prose pasted by mistake does not fill the list. */
export function unreadLines(readings: readonly Mode06[], stage: Stage): GaugeVerdict[] {
  const all = readings.flatMap(({ problems }, i) => {
    const byLine = new Map<number, string[]>()
    for (const { line, reason } of problems) byLine.set(line, [...(byLine.get(line) ?? []), reason])
    return [...byLine].map(([line, reasons]) => ({
      rule: readings.length > 1 ? `line ${line} of reading ${i + 1}` : `line ${line}`,
      line,
      why: reasons.join('; '),
    }))
  })
  const verdict = (rule: string, value: number, unit: string, why: string): GaugeVerdict => ({
    test: 'mode 06',
    rule,
    stage,
    value,
    unit,
    verdict: 'noted',
    limit: 'every line is a frame or an answer of service 06',
    why,
    source: 'ISO 15765-2 for frames, SAE J1979 for answers, both as restated in service information',
    about: 'reading',
  })
  const left = all.length - shownAtMost
  return [
    ...all
      .slice(0, shownAtMost)
      .map(({ rule, line, why }) => verdict(rule, line, 'line', `Not read: ${why}.`)),
    ...(left > 0
      ? [
          verdict(
            'further lines',
            left,
            'lines',
            `${left} more lines were not read. Was this the right text?`,
          ),
        ]
      : []),
  ]
}
