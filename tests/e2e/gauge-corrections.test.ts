// A misread gauge in a real browser: a run of pulls put right in one go, undone, and taken back; seen in light and dark.
import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { type App, startApp } from './harness.ts'

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
let app: App
beforeAll(async () => {
  app = await startApp()
  const { page } = app
  page.setDefaultTimeout(8000)
  await page.getByRole('button', { name: 'New job' }).first().click()
  await page.getByLabel('Complaint').fill('Down on power')
  await page.getByLabel('Vehicle, boat or machine').fill('Parade float tractor')
  await page.getByRole('radiogroup', { name: 'Arrangement' }).getByText('Inline').click()
  await page.getByRole('radiogroup', { name: 'Cylinders' }).getByText('4', { exact: true }).click()
  await page.getByRole('button', { name: 'Make the job' }).click()
  await page.getByRole('dialog').waitFor({ state: 'detached' })
  await page.getByRole('link', { name: /^Gauges/ }).click()
  await page
    .getByRole('group', { name: 'Test', exact: true })
    .getByRole('button', { name: /^Compression/ })
    .click()
  // Cylinder 3 was read on the small divisions.
  for (const [at, final] of [150, 152, 75, 148].entries()) {
    await page.getByLabel(`Final, cylinder ${at + 1}, psi`).fill(String(final))
    await page.getByLabel(`Final, cylinder ${at + 1}, psi`).press('Enter')
  }
  await page.locator('.pull').nth(3).waitFor()
})
afterAll(() => app.close())

const section = () => app.page.getByRole('region', { name: 'Corrections' })
const form = () => app.page.getByRole('form', { name: 'Correct pulls' })

async function violations(): Promise<string[]> {
  await app.page.evaluate(axe)
  return app.page.evaluate(async () => {
    const axe: unknown = Reflect.get(window, 'axe')
    if (typeof axe !== 'object' || axe === null || !('run' in axe) || typeof axe.run !== 'function')
      return ['axe is missing']
    const result: { violations: { id: string; nodes: { html: string }[] }[] } = await axe.run(
      '.corrections',
      {
        runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      },
    )
    return result.violations.map(one => `${one.id}: ${one.nodes[0]?.html.slice(0, 160)}`)
  })
}

async function chooseRange(from: string, to: string): Promise<void> {
  await form().getByLabel('From pull').selectOption({ label: from })
  await form().getByLabel('To pull').selectOption({ label: to })
  await form().getByRole('button', { name: 'Choose these' }).click()
}

it('shows readings and verdicts before and after, and applies nothing until told', async () => {
  const { page } = app
  await section().getByRole('button', { name: 'Gauge misread? Correct pulls' }).click()
  await chooseRange('3', '3')
  await form().getByText('Pulls to correct (1 of 4)').waitFor()
  await form().getByLabel('A division was taken for').fill('5')
  await form().getByLabel('and really is').fill('10')
  await form().getByRole('table', { name: 'Readings before and after' }).getByText(/^150/).waitFor()
  await form()
    .getByRole('table', { name: 'Verdicts that change' })
    .getByRole('row', { name: /^Cylinder 3 .*outside within$/ })
    .first()
    .waitFor()
  expect(await form().getByRole('button', { name: 'Correct 1 pull' }).isDisabled()).toBe(true)
  expect(await page.locator('.pull', { hasText: 'corrected' }).count()).toBe(0)
})

it.each(['light', 'dark'] as const)('has nothing for the accessibility check to find: %s', async theme => {
  await app.page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
  // Half under the bar of the page a button would count as too small.
  await section().evaluate(one => one.scrollIntoView({ block: 'center' }))
  expect(await violations()).toEqual([])
})

it('corrects with a reason; the entry stays struck beside it, and undo takes it back', async () => {
  const { page } = app
  await form().getByLabel('Reason').fill('division is 10 psi')
  await form().getByRole('button', { name: 'Correct 1 pull' }).press('Enter')
  const table = section().getByRole('table', { name: 'Corrected pulls' })
  await table.getByText('times 2: division is 10 psi').waitFor()
  expect(await table.locator('s').innerText()).toMatch(/^75/)
  await table.getByRole('cell', { name: /^150/ }).waitFor()
  await page.getByRole('button', { name: /^Undo/ }).click()
  await table.waitFor({ state: 'detached' })
  await page.getByRole('button', { name: /^Redo/ }).click()
  await table.waitFor()
})

it('takes corrections back for all chosen at once', async () => {
  await section().getByRole('button', { name: 'Gauge misread? Correct pulls' }).click()
  await form().getByRole('button', { name: 'All' }).click()
  await form().getByText('Back to as entered').click()
  await form()
    .getByText(/Stay as they are/)
    .waitFor()
  await form().getByLabel('Reason').fill('the gauge was right')
  await form().getByRole('button', { name: 'Correct 1 pull' }).click()
  const table = section().getByRole('table', { name: 'Corrected pulls' })
  await table.getByText('back to as entered: the gauge was right').waitFor()
  expect(await table.locator('s').count()).toBe(0)
  expect(app.complaints).toEqual([])
})

it.each(['light', 'dark'] as const)('draws the readings with their numbers beside: %s', async theme => {
  const { page } = app
  await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
  const picture = page.locator('.gauge-picture')
  await picture.evaluate(one => one.setAttribute('open', ''))
  await picture.getByRole('img', { name: /^Compression; its numbers/ }).waitFor()
  expect(await picture.locator('.picture-bar').count()).toBe(4)
  await picture.getByRole('row', { name: /^3 75 / }).waitFor()
  const calls = page.locator('.rule-calls')
  if ((await calls.count()) > 0) await calls.evaluate(one => one.setAttribute('open', ''))
})

it('saves all readings as CSV, what was corrected and taken back included', async () => {
  const { page } = app
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save all readings as CSV' }).click(),
  ])
  expect(download.suggestedFilename()).toMatch(/^readings-\d{4}-\d\d-\d\d-.*\.csv$/)
  const text = await readFile(await download.path(), 'utf8')
  const finals = text.split('\r\n').filter(line => line.includes(',final,'))
  expect(finals.map(line => line.split(',').slice(3, 7).join(' '))).toEqual([
    '1 final 150 psi',
    '2 final 152 psi',
    '3 final 75 psi',
    '4 final 148 psi',
  ])
  expect(app.complaints).toEqual([])
})

it('shows what each published limit would call, and judges by the one chosen', async () => {
  const { page } = app
  await section().getByRole('button', { name: 'Gauge misread? Correct pulls' }).click()
  await chooseRange('3', '3')
  await form().getByLabel('A division was taken for').fill('5')
  await form().getByLabel('and really is').fill('9')
  await form().getByLabel('Reason').fill('division is 9 psi')
  await form().getByRole('button', { name: 'Correct 1 pull' }).click()
  const calls = page.locator('.rule-calls')
  // By key: a notice may lie over this place for a moment.
  await calls.locator('summary').press('Enter')
  const table = calls.getByRole('table', { name: 'Cylinder 3, spread' })
  await table.getByRole('row', { name: /^Within 20 psi .*judged by this$/ }).waitFor()
  await table.getByRole('button', { name: 'Use for spread: Within 10 psi' }).click()
  await table.getByRole('row', { name: /^Within 10 psi outside .*judged by this$/ }).waitFor()
  await page
    .getByRole('region', { name: 'Verdicts' })
    .getByText('Cylinder 3, below highest: outside')
    .waitFor()
  expect(app.complaints).toEqual([])
})
