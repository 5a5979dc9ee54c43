// The whole job without a mouse: every step by Tab, arrows, letters and Enter.
import { afterAll, beforeAll, expect, it } from 'vitest'
import { type App, startApp } from './harness.ts'
import { testPhotos } from './photos.ts'

let app: App
beforeAll(async () => {
  app = await startApp()
})
afterAll(() => app.close())

/** Tabs until the focused element has this name; fails when it cannot be reached in one round. */
async function tabTo(name: RegExp): Promise<void> {
  const { page } = app
  for (let step = 0; step < 120; step += 1) {
    await page.keyboard.press('Tab')
    const focused = await page.evaluate(() => {
      const { activeElement } = document
      const field = activeElement?.closest<HTMLInputElement>('input, textarea, select')
      const text = activeElement?.matches('button, a, [role="gridcell"]') ? activeElement.textContent : ''
      return [activeElement?.getAttribute('aria-label'), field?.labels?.[0]?.textContent, text].join(' ')
    })
    if (name.test(focused)) return
  }
  throw new Error(`Tab does not reach ${name}`)
}

const stateOf = (cylinder: number) => app.page.locator(`[data-bore="${cylinder}"]`).getAttribute('aria-label')

it('makes a job, brings photos in, tags, types pulls, undoes and writes up', async () => {
  const { page } = app
  await page.getByText('No jobs yet').waitFor()
  await tabTo(/New job/)
  await page.keyboard.press('Enter')
  await page.getByRole('dialog').waitFor()
  await page.keyboard.type('Misfire when cold')
  await tabTo(/Vehicle/)
  await page.keyboard.type('Mill pump')
  await tabTo(/Make the job/)
  await page.keyboard.press('Enter')
  await page.locator('.deck').waitFor()
  // The dialog hands the focus back a frame after it is gone.
  await page.getByRole('dialog').waitFor({ state: 'detached' })
  await page.evaluate(() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done))))

  await tabTo(/Add photos/)
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.keyboard.press('Enter')])
  await chooser.setFiles(
    (await testPhotos(4)).map(({ name, bytes }) => ({ name, mimeType: 'image/jpeg', buffer: bytes })),
  )
  await page.getByText('4 photos added.').waitFor()
  await tabTo(/Fill slots/)
  await page.keyboard.press('Enter')
  await page.getByText('4 of 4 photos placed.').waitFor()
  await tabTo(/^\s*Fill slots/)
  await page.keyboard.press('Enter')
  await page.locator('.unsorted').waitFor({ state: 'detached' })
  await page.evaluate(() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done))))

  await tabTo(/cylinder 1: not read yet/)
  await page.keyboard.press('Enter')
  await page.keyboard.press('n')
  await expect.poll(() => stateOf(1)).toContain('sound')
  // Selected next: cylinder 2, with the focus still on the tray.
  await page.keyboard.press('c')
  await expect.poll(() => stateOf(2)).toContain('fault')
  await page.keyboard.press('Control+z')
  await expect.poll(() => stateOf(2)).toContain('unknown')
  await page.keyboard.press('Control+Shift+z')
  await expect.poll(() => stateOf(2)).toContain('fault')

  await page.keyboard.press('Alt+2')
  await tabTo(/First puff, cylinder 1/)
  for (const [first, final] of [
    ['118', '150'],
    ['117', '151'],
    ['119', '149'],
    ['60', '88'],
  ] as const) {
    await page.keyboard.type(first)
    await page.keyboard.press('Enter')
    await page.keyboard.type(final)
    await page.keyboard.press('Enter')
  }
  await expect.poll(() => page.locator('.pull').count()).toBe(4)
  await expect.poll(() => stateOf(4)).toContain('fault')

  await page.keyboard.press('Alt+4')
  await tabTo(/Save PDF/)
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')])
  expect(download.suggestedFilename()).toContain('mill-pump')
  expect(app.complaints).toEqual([])
})

it('moves over the deck with the arrow keys, and nothing typed in a field tags a plug', async () => {
  const { page } = app
  await page.keyboard.press('Alt+1')
  await page.locator('[data-bore="1"]').focus()
  await page.keyboard.press('ArrowDown')
  await expect.poll(() => page.locator('[data-bore="2"]').getAttribute('aria-selected')).toBe('true')
  const before = await stateOf(2)
  await tabTo(/Note/)
  await page.keyboard.type('n o t')
  await page.keyboard.press('Tab')
  await page.waitForTimeout(500)
  expect(await stateOf(2)).toBe(before)
})

it('shows the sheet of keys on "?"', async () => {
  const { page } = app
  await page.locator('[data-bore="1"]').focus()
  await page.keyboard.press('?')
  await page.getByRole('dialog').getByText('Tag as oil-wetted').waitFor()
  await page.keyboard.press('Escape')
  await page.getByRole('dialog').waitFor({ state: 'detached' })
  expect(app.complaints).toEqual([])
})
