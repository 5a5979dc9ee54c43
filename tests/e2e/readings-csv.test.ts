// A table of readings in a real browser: chosen, its columns seen, wrong rows listed, the others taken in one step, and
// that step taken back.
import { afterAll, beforeAll, expect, it } from 'vitest'
import { type App, startApp } from './harness.ts'

let app: App
beforeAll(async () => {
  app = await startApp()
  const { page } = app
  await page.getByRole('button', { name: 'New job' }).first().click()
  await page.getByLabel('Complaint').fill('Down on power')
  await page.getByRole('radiogroup', { name: 'Arrangement' }).getByText('Inline').click()
  await page.getByRole('radiogroup', { name: 'Cylinders' }).getByText('4', { exact: true }).click()
  await page.getByRole('button', { name: 'Make the job' }).click()
  await page.getByRole('dialog').waitFor({ state: 'detached' })
  await page.getByRole('link', { name: /^Gauges/ }).click()
  await page
    .getByRole('group', { name: 'Test', exact: true })
    .getByRole('button', { name: /^Compression/ })
    .click()
})
afterAll(() => app.close())

const table = [
  'Cyl;Final;First puff',
  ';bar;bar',
  '1;10,4;8,2',
  '2;10,3;8,1',
  '3;sieben;4',
  '4;6,9;4,1',
].join('\r\n')

it('shows what each row becomes, lists the wrong one, and takes the rest in one step', async () => {
  const { page } = app
  await page
    .getByLabel('CSV file of readings')
    .setInputFiles({ name: 'bench.csv', mimeType: 'text/csv', buffer: Buffer.from(table) })
  const form = page.getByRole('region', { name: 'Compression from bench.csv' })
  await form.getByText('3 of 4 rows can be taken, 1 cannot.').waitFor()
  expect(await form.getByLabel('Pressures are in').inputValue()).toBe('bar')
  expect(await form.getByRole('list', { name: 'Rows that cannot be taken' }).innerText()).toContain('Line 5:')
  expect(await page.locator('.pull').count()).toBe(0)
  await form.getByRole('button', { name: 'Take 3 readings into the job' }).click()
  await expect.poll(() => page.locator('.pull').count()).toBe(3)
  const voided = () => page.locator('.pull[data-voided="true"]').count()
  await page.getByRole('button', { name: /^Undo/ }).click()
  await expect.poll(voided).toBe(3)
  await page.getByRole('button', { name: /^Redo/ }).click()
  await expect.poll(voided).toBe(0)
  expect(app.complaints).toEqual([])
})
