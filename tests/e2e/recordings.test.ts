// A recording in a real browser: dropped, its columns seen, evaluated in its thread, looked at, kept, and drawn again after
// the job was reopened; by keyboard where it is the point; and axe finds nothing on the way.
import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { layoutById } from '../../shared/engine/layouts.ts'
import { asCsv } from '../../shared/recordings/testing/as-csv.ts'
import { crankRecording } from '../../shared/recordings/testing/crank-recording.ts'
import { starterRecording } from '../../shared/recordings/testing/starter-recording.ts'
import { type App, startApp } from './harness.ts'

const layout = layoutById('i4-1342')
if (!layout) throw new Error('no layout')
const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

let app: App
beforeAll(async () => {
  app = await startApp()
  const { page } = app
  await page.getByRole('button', { name: 'New job' }).first().click()
  await page.getByLabel('Complaint').fill('Rough when warm')
  await page.getByLabel('Vehicle, boat or machine').fill('Parade float tractor')
  await page.getByRole('radiogroup', { name: 'Arrangement' }).getByText('Inline').click()
  await page.getByRole('radiogroup', { name: 'Cylinders' }).getByText('4', { exact: true }).click()
  await page.getByRole('button', { name: 'Make the job' }).click()
})
afterAll(() => app.close())

const file = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) })
const picker = () => app.page.locator('input[aria-label="Recording as CSV"]')

async function openTest(name: RegExp): Promise<void> {
  await app.page.getByRole('link', { name: /^Gauges/ }).click()
  await app.page.getByRole('group', { name: 'Test' }).getByRole('button', { name }).click()
}

async function violations(): Promise<string[]> {
  await app.page.evaluate(axe)
  return app.page.evaluate(async () => {
    const axe: unknown = Reflect.get(window, 'axe')
    if (typeof axe !== 'object' || axe === null || !('run' in axe) || typeof axe.run !== 'function')
      return ['axe is missing']
    const result: { violations: { id: string; nodes: { html: string; failureSummary: string }[] }[] } =
      await axe.run(document, {
        runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      })
    return result.violations.map(
      one => `${one.id}: ${one.nodes[0]?.html.slice(0, 160)} ${one.nodes[0]?.failureSummary}`,
    )
  })
}

describe('relative compression', () => {
  const made = starterRecording({ layout, percent: { 3: 78 }, noise: 0.05, rate: 10_000, sync: 'cycle' })

  it('refuses what is no recording, and says what to do', async () => {
    await openTest(/relative compression/i)
    await picker().setInputFiles(file('letter.csv', 'Dear customer,\nyour car is ready.\n'))
    await app.page.getByRole('alert').getByText('Export the recording as CSV').waitFor()
    // The browser logs every refused request; this one was meant to be.
    expect(app.complaints.splice(0)).toEqual([expect.stringContaining('400')])
  })

  it('shows the columns and what they were taken for', async () => {
    await picker().setInputFiles(
      file('cranking.csv', asCsv(made.recording).replace('\n', '\nlost,trigger\n')),
    )
    const form = app.page.getByRole('form', { name: 'Columns of cranking.csv' })
    await form.waitFor()
    expect(await form.getByRole('columnheader', { name: /Starter current/ }).innerText()).toMatch(/current$/)
    expect(await form.getByLabel('Sync of cylinder 1').inputValue()).toBe('2')
    await form.getByText('How the file is written').click()
    await form.getByLabel('Columns are separated by').selectOption('semicolon')
    await app.page.getByRole('alert').getByText('Choose another separator').waitFor()
    expect(app.complaints.splice(0)).toEqual([expect.stringContaining('400')])
    await form.getByLabel('Columns are separated by').selectOption('comma')
    await app.page.getByRole('alert').waitFor({ state: 'detached' })
    expect(await violations()).toEqual([])
  })

  it.each(['light', 'dark'] as const)('evaluates and marks it: %s', async theme => {
    const { page } = app
    await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
    await page.getByRole('button', { name: 'Evaluate' }).press('Enter')
    const result = page.getByRole('region', { name: 'Result of cranking.csv' })
    await result.waitFor()
    await result.getByRole('img', { name: /compressions marked.*Lowest: cylinder 3/ }).waitFor()
    expect(await result.getByRole('row', { name: /^3 7[678]\.\d %/ }).count()).toBe(1)
    await result.getByText('Cylinder 3 is lowest').waitFor()
    expect(await result.locator('.recording-mark').count()).toBeGreaterThan(40)
    await result.getByLabel('Show').selectOption('2')
    expect(await result.locator('.recording-mark').count()).toBeLessThan(20)
    expect(await violations()).toEqual([])
    await page.getByRole('button', { name: 'Change the columns' }).click()
  })

  it('keeps it as a pull, and draws it again after the host was started anew', async () => {
    const { page } = app
    await page.getByRole('button', { name: 'Evaluate' }).click()
    await page.getByRole('button', { name: 'Keep as a pull' }).click()
    await page.getByRole('region', { name: 'Kept recordings' }).waitFor()
    await app.restart()
    await page.locator('.job-open').click()
    await openTest(/relative compression/i)
    const kept = page.getByRole('article', { name: /^cranking.csv/ })
    await kept.getByRole('button', { name: 'Show the picture' }).click()
    await kept.getByRole('img', { name: /Lowest: cylinder 3/ }).waitFor()
    expect(await violations()).toEqual([])
  })
})

describe('crank speed', () => {
  it('asks for the wheel, and reads the teeth', async () => {
    const { page } = app
    const { edges } = crankRecording({ layout, percent: { 2: 70 } })
    const rows = [...edges].slice(1).map((edge, at) => ((edge - (edges[at] ?? 0)) * 1e6).toFixed(1))
    await openTest(/crank speed/i)
    await picker().setInputFiles(file('idle.csv', `interval (us)\n${rows.join('\n')}\n`))
    const form = page.getByRole('form', { name: 'Columns of idle.csv' })
    await form.getByText('Choose the wheel.').waitFor()
    expect(await form.getByRole('button', { name: 'Evaluate' }).isDisabled()).toBe(true)
    await form.getByLabel('Wheel').selectOption('60-2')
    await form.getByRole('button', { name: 'Evaluate' }).click()
    const result = page.getByRole('region', { name: 'Result of idle.csv' })
    await result.getByText(/One cylinder adds least, position \d/).waitFor()
    expect(await violations()).toEqual([])
    await result.getByRole('button', { name: 'Discard' }).click()
    await result.waitFor({ state: 'detached' })
  })

  it('has made the page complain of nothing', () => {
    expect(app.complaints).toEqual([])
    expect(app.foreign).toEqual([])
  })
})
