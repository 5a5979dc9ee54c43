// The gauges in a real browser: a whole bench of eight by keyboard alone, the guided walk, and the other tests' entries.
import { afterAll, beforeAll, expect, it } from 'vitest'
import { type App, startApp } from './harness.ts'

let app: App
beforeAll(async () => {
  app = await startApp()
  const { page } = app
  await page.getByRole('button', { name: 'New job' }).first().click()
  await page.getByLabel('Complaint').fill('Shakes at idle')
  await page.getByLabel('Vehicle, boat or machine').fill('Parade float tractor')
  await page.getByRole('radiogroup', { name: 'Arrangement' }).getByText('Vee').click()
  await page.getByRole('radiogroup', { name: 'Cylinders' }).getByText('8', { exact: true }).click()
  await page.getByText('Vee eight, odd and even banks').first().click()
  await page.getByRole('button', { name: 'Make the job' }).click()
  await page.locator('[data-bore="8"]').waitFor()
  await page.getByRole('dialog').waitFor({ state: 'detached' })
  await page.getByRole('link', { name: /^Gauges/ }).click()
})
afterAll(() => app.close())

const focused = () => app.page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')

async function tabTo(name: RegExp): Promise<void> {
  for (let step = 0; step < 80; step += 1) {
    if (name.test(await focused())) return
    await app.page.keyboard.press('Tab')
  }
  throw new Error(`Tab does not reach ${name}`)
}

const open = async (test: string | RegExp) => {
  await app.page.getByRole('group', { name: 'Test', exact: true }).getByRole('button', { name: test }).click()
}

/** First puff and final of each cylinder, two rounds; cylinder 5 is low. */
const bench = [0, 1].map(round =>
  [1, 2, 3, 4, 5, 6, 7, 8].map(cylinder =>
    cylinder === 5 ? [62 + round, 96 + round] : [110 + cylinder + round, 148 + cylinder - round],
  ),
)

it('takes a bench of eight, two pulls each with first puff and final, by digits and Enter alone', async () => {
  const { page } = app
  await tabTo(/^First puff, cylinder 1, psi/)
  const started = Date.now()
  for (const round of bench)
    for (const [at, [first, final]] of round.entries()) {
      expect(await focused()).toBe(`First puff, cylinder ${at + 1}, psi`)
      await page.keyboard.type(String(first))
      await page.keyboard.press('Enter')
      await page.keyboard.type(String(final))
      await page.keyboard.press('Enter')
    }
  console.log(`32 numbers typed and walked through in ${Date.now() - started} ms`)
  await expect.poll(() => page.locator('.pull').count()).toBe(16)
  const rows = page.locator('.gauge-table tbody tr')
  for (const round of bench)
    for (const [at, [first, final]] of round.entries())
      await rows.nth(at).getByText(`${first} → ${final}\u00a0psi`, { exact: true }).waitFor()
  await expect.poll(() => page.locator('[data-bore="5"]').getAttribute('aria-label')).toContain('fault')
})

it('keeps a number that cannot be read in its field, marks it, and goes back by Backspace', async () => {
  const { page } = app
  const first = page.getByLabel('First puff, cylinder 2, psi')
  await first.focus()
  await page.keyboard.type('1,480')
  await page.keyboard.press('Enter')
  expect(await focused()).toBe('First puff, cylinder 2, psi')
  expect(await first.getAttribute('aria-invalid')).toBe('true')
  await first.fill('')
  await page.keyboard.press('Backspace')
  expect(await focused()).toBe('Final, cylinder 1, psi')
  expect(await page.locator('.pull').count()).toBe(16)
})

it('follows the firing order when that is chosen', async () => {
  const { page } = app
  await page.getByRole('button', { name: 'firing order' }).click()
  const title = await page.getByRole('button', { name: 'Firing path' }).getAttribute('title')
  const order = (/[\d-]+$/.exec(title ?? '')?.[0] ?? '').split('-')
  expect(order).toHaveLength(8)
  await page.getByLabel('First puff, cylinder 1, psi').focus()
  for (const cylinder of order) {
    expect(await focused()).toBe(`First puff, cylinder ${cylinder}, psi`)
    await page.keyboard.press('Enter')
    await page.keyboard.press('Enter')
  }
  expect(await focused()).toBe('First puff, cylinder 1, psi')
  await page.getByRole('button', { name: 'cylinder order' }).click()
})

it('notes set-up and tester, and the next pull names the tester', async () => {
  const { page } = app
  await page.getByText('Set-up and tester').click()
  await page.getByRole('group', { name: 'Throttle' }).getByRole('button', { name: 'open' }).click()
  await page.getByText('throttle open').waitFor()
  await page.getByLabel('Battery before (V)').fill('12.6')
  await page.keyboard.press('Enter')
  await page.getByText('battery before 12.6').waitFor()
  await page.getByRole('button', { name: 'Add a tester' }).click()
  await page.getByRole('dialog').getByLabel('Name').fill('Bench gauge')
  await page.getByRole('dialog').getByLabel('One division').fill('5')
  await page.getByRole('button', { name: 'Add the tester' }).click()
  await page.getByRole('dialog').waitFor({ state: 'detached' })
  await expect
    .poll(() => page.getByLabel('Tester: compression gauge').evaluate(one => one.textContent))
    .toContain('Bench gauge, division 5 psi')
  await page.getByLabel('Final, cylinder 8, psi').fill('151')
  await page.keyboard.press('Enter')
  await page.locator('.gauge-table tbody tr').nth(7).getByText('151\u00a0psi', { exact: true }).click()
  await page.getByRole('dialog').getByText('read with Bench gauge').waitFor()
  await page.getByRole('button', { name: 'Leave it' }).click()
  await page.getByRole('dialog').waitFor({ state: 'detached' })
})

it('walks one cylinder at a time, and leaves to the grid with what is half typed', async () => {
  const { page } = app
  await open(/^Leak-down/)
  await page.getByRole('button', { name: 'One cylinder at a time' }).click()
  await page.getByText('Caution', { exact: true }).waitFor()
  expect(await focused()).toBe('Lost, cylinder 1, %')
  await page.keyboard.type('12')
  await page.keyboard.press('Enter')
  // "2" picks the exhaust, Enter keeps the pull and goes to the next cylinder.
  await page.keyboard.press('2')
  await page.keyboard.press('Enter')
  await page.getByText('2 of 8', { exact: false }).first().waitFor()
  expect(await focused()).toBe('Lost, cylinder 2, %')
  await page.keyboard.type('31')
  await page.getByRole('button', { name: 'One cylinder at a time' }).click()
  expect(await page.getByLabel('Lost, cylinder 2, %').inputValue()).toBe('31')
  await page.locator('.gauge-table').getByText('12\u00a0% lost, exhaust').waitFor()
})

it('takes vacuum, codes, a swap and an observation', async () => {
  const { page } = app
  await open(/^Vacuum/)
  await page.getByLabel('Vacuum at idle, inHg').fill('17.5')
  await page.getByRole('button', { name: /^regular drop/ }).click()
  await page.getByRole('button', { name: 'Keep the reading' }).click()
  await page.locator('.pull').getByText('idle 17.5\u00a0inHg, regular drop').waitFor()

  await open(/codes/i)
  await page.getByLabel(/^Codes/).fill('p0302, P0171 P030')
  await page.getByRole('button', { name: 'Keep the codes' }).click()
  await page.getByRole('alert').waitFor()
  expect(await page.locator('.pull').count()).toBe(0)
  await page.getByLabel(/^Codes/).fill('p0302, P0171')
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'Keep the codes' }).click()
  await page.locator('.pull').getByText('P0302, P0171').waitFor()

  await open(/^Swap/)
  await page.getByRole('group', { name: 'Part' }).getByRole('button', { name: 'coil' }).click()
  await page.getByLabel('From cylinder').fill('5')
  await page.getByLabel(/^To cylinder/).fill('3')
  await page.getByRole('group', { name: 'The fault' }).getByRole('button', { name: 'stayed' }).click()
  await page.getByRole('button', { name: 'Keep the swap' }).click()
  await page.locator('.pull').getByText('coil, 5 to 3: stayed').waitFor()

  await open(/^Observation/)
  const smoke = page.getByRole('radiogroup', { name: 'blue smoke' })
  await smoke.getByText('yes', { exact: true }).click()
  await expect.poll(() => smoke.getByRole('radio', { name: 'yes' }).isChecked()).toBe(true)
  await smoke.getByText('not looked').click()
  await expect.poll(() => smoke.getByRole('radio', { name: 'not looked' }).isChecked()).toBe(true)
  await page.getByText('All answers').click()
  expect(await page.locator('.pull[data-voided="true"]').count()).toBe(1)
  expect(app.complaints).toEqual([])
})
