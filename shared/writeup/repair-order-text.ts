// The repair-order paragraph for the clipboard: complaint, cause, correction, in plain text.
import type { WriteUp } from './write-up.ts'

const headFacts = new Set([
  'Vehicle',
  'VIN',
  'Odometer',
  'Running hours',
  'Altitude',
  'Barometer',
  'Engine warm',
])

/** Lines end with LF; nothing but text, so that any program takes it. */
export function repairOrderText(report: WriteUp): string {
  const facts = report.facts
    .filter(([label]) => headFacts.has(label))
    .map(([label, value]) => `${label}: ${value}`)
  const findings = report.states.flatMap(({ cylinder, state, evidence }) => {
    const notable = evidence.filter(one => one.state !== 'sound')
    if (notable.length === 0) return []
    const noted = report.findings.find(one => one.cylinder === cylinder)?.noted ?? []
    return [
      `  Cyl ${cylinder} (${state}): ${[...notable.map(one => one.headline), ...noted].join('; ').replace(/\.?$/, '.')}`,
    ]
  })
  const lines = [
    ...(report.invented ? ['INVENTED DEMONSTRATION JOB'] : []),
    ...facts,
    `COMPLAINT: ${report.complaint}`,
    `FOUND: ${report.summary.join(' ')}`,
    ...findings,
    ...report.engine.map(line => `  Engine: ${withoutSource(line)}`),
    ...report.readings.map(line => `  ${line}`),
    `CAUSE: ${report.cause || 'Not stated.'}`,
    `CORRECTION: ${report.work || 'No repair is recorded.'}`,
    ...(report.proof.length > 0 ? [`CHECKED AFTER: ${report.proof.join(' ')}`] : []),
    ...(report.notTested.length > 0 ? [`NOT TESTED: ${report.notTested.join('; ')}.`] : []),
    ...(report.note ? [report.note] : []),
  ]
  return `${lines.join('\n').replaceAll('\u00a0', ' ')}\n`
}

/** Sources stand in the report; in a repair order they only crowd. */
const withoutSource = (line: string): string => line.replaceAll(/ \[[^\]]*\]/g, '')
