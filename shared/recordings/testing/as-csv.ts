// Writes a made recording the way a device's program would.
import type { StarterRecording } from './whole-recording.ts'

export function asCsv({ time, amperes, sync }: StarterRecording, { semicolons = false } = {}): string {
  const number = (value: number, digits: number) => {
    const text = Number.isNaN(value) ? '' : value.toFixed(digits)
    return semicolons ? text.replace('.', ',') : text
  }
  const separator = semicolons ? ';' : ','
  const names = ['Time (s)', 'Starter current (A)', ...(sync ? ['Sync (V)'] : [])]
  const lines = [names.join(separator)]
  for (const [at, now] of time.entries()) {
    const fields = [number(now, 6), number(amperes[at] ?? Number.NaN, 2)]
    if (sync) fields.push(number(sync[at] ?? Number.NaN, 2))
    lines.push(fields.join(separator))
  }
  return `${lines.join('\n')}\n`
}
