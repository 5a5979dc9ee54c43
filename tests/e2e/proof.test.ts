// The proof after the repair in a real browser: the same test that failed, typed again, before beside after with its
// difference; proven only once what had failed is in order.
import { afterAll, beforeAll, expect, it } from 'vitest'
import { type App, startApp } from './harness.ts'

let app: App
beforeAll(async () => {
  app = await startApp()
})
afterAll(() => app.close())

async function typeFinals(values: readonly number[]): Promise<void> {
  const { page } = app
  await page.getByRole('link', { name: /^Gauges/ }).click()
  await page
    .getByRole('group', { name: 'Test', exact: true })
    .getByRole('button', { name: /^Compression/ })
    .click()
  for (const [at, final] of values.entries()) {
    const field = page.getByLabel(`Final, cylinder ${at + 1}, psi`)
    await field.fill(String(final))
    await field.press('Enter')
    await expect.poll(() => page.locator('.pull').count()).toBe(at + 1)
  }
}

it('says unverified, then proven, with the difference and its interval', async () => {
  const { page } = app
  await page.getByRole('button', { name: 'New job' }).first().click()
  await page.getByLabel('Complaint').fill('Shakes at idle')
  await page.getByRole('radiogroup', { name: 'Arrangement' }).getByText('Inline').click()
  await page.getByRole('radiogroup', { name: 'Cylinders' }).getByText('4', { exact: true }).click()
  await page.getByRole('button', { name: 'Make the job' }).click()
  await page.getByRole('dialog').waitFor({ state: 'detached' })
  await typeFinals([150, 152, 90, 149])

  await page.getByRole('link', { name: /^Write-up/ }).click()
  await page.getByLabel('Work done').fill('Exhaust valve of cylinder 3 ground in')
  await page.getByLabel('Work done').blur()
  const preview = page.getByRole('article', { name: 'Preview' })
  await preview.getByText('Unverified: no test was repeated after the repair.').waitFor()

  await page.getByRole('button', { name: 'Trays' }).click()
  await page.getByRole('menuitem', { name: 'Add a tray' }).click()
  await page.getByRole('button', { name: 'Keep' }).click()
  await typeFinals([151, 150, 147, 150])
  const proof = page.getByRole('region', { name: 'Before and after the work' })
  await proof.getByText(/^Proven:/).waitFor()
  const row = proof.getByRole('row').filter({ hasText: 'cylinder 3' }).first()
  expect(await row.innerText()).toMatch(/±/)
  expect(await row.innerText()).toContain('in order')

  await page.getByRole('link', { name: /^Write-up/ }).click()
  await preview.getByText(/^Proven:/).waitFor()
  expect(app.complaints).toEqual([])
})
