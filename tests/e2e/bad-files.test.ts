// A bad file among good ones: one clear line for it, the others go in; a cancelled import leaves nothing.
import { afterAll, beforeAll, expect, it } from 'vitest'
import { type App, startApp } from './harness.ts'
import { testPhotos } from './photos.ts'

let app: App
beforeAll(async () => {
  app = await startApp()
  const { page } = app
  await page.getByRole('button', { name: 'New job' }).first().click()
  await page.getByLabel('Complaint').fill('Cough')
  await page.getByRole('button', { name: 'Make the job' }).click()
  await page.locator('[data-bore="4"]').waitFor()
})
afterAll(() => app.close())

it('says what is wrong with each bad file and takes the good ones', async () => {
  const { page } = app
  const [good, cut] = await testPhotos(2)
  if (!good || !cut) throw new Error('no photos')
  await page.getByLabel('Photo files').setInputFiles([
    { name: good.name, mimeType: 'image/jpeg', buffer: good.bytes },
    { name: 'cut.jpg', mimeType: 'image/jpeg', buffer: cut.bytes.subarray(0, cut.bytes.length / 2) },
    { name: 'empty.jpg', mimeType: 'image/jpeg', buffer: Buffer.alloc(0) },
    { name: '<img src=x onerror=alert(1)>.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('just words') },
  ])
  await page.getByText('1 photos added, 3 not.').waitFor()
  const lines = await page.locator('.intake-result li').allTextContents()
  expect(lines).toHaveLength(3)
  expect(lines.find(line => line.startsWith('cut.jpg'))).toMatch(/JPEG/)
  expect(lines.find(line => line.startsWith('empty.jpg'))).toMatch(/empty/)
  expect(lines.find(line => line.startsWith('<img'))).toMatch(/text/i)
  expect(await page.locator('.unsorted li').count()).toBe(1)
  expect(app.complaints).toEqual([])
})
