// The repair-order paragraph for the clipboard: complaint, cause, correction, in plain text.
import type { WriteUp } from './write-up.ts'

/** Lines end with LF; nothing but text, so that any program takes it. */
export function repairOrderText(report: WriteUp): string {
  const facts = report.facts
    .filter(([label]) => ['Vehicle', 'VIN', 'Odometer'].includes(label))
    .map(([label, value]) => `${label}: ${value}`)
  const findings = report.findings
    .filter(one => one.state === 'fault' || one.state === 'watch')
    .flatMap(one => one.lines.slice(0, 4).map(line => `  Cyl ${one.cylinder} (${one.state}): ${line}`))
  const lines = [
    ...(report.invented ? ['INVENTED DEMONSTRATION JOB'] : []),
    ...facts,
    `COMPLAINT: ${report.complaint}`,
    `FOUND: ${report.summary.join(' ')}`,
    ...findings,
    ...report.engine.map(line => `  Engine: ${line}`),
    ...report.tables.flatMap(table => [
      `  ${table.title}: ${table.rows
        .map(
          row =>
            `${row[0]} ${row
              .slice(1, 5)
              .filter(cell => cell !== '\u2013')
              .join(' / ')}`,
        )
        .join('; ')}`,
    ]),
    `CAUSE AND CORRECTION: ${report.repair.length > 0 ? report.repair.join(' ') : 'No repair is recorded.'}`,
    ...(report.proof.length > 0 ? [`PROOF: ${report.proof.join(' ')}`] : []),
    ...(report.notTested.length > 0 ? [`NOT TESTED: ${report.notTested.join(', ')}.`] : []),
    ...(report.note ? [report.note] : []),
  ]
  return `${lines.join('\n').replaceAll('\u00a0', ' ')}\n`
}
