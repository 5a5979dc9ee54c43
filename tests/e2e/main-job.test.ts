// The main job in a real browser: new job, eight photos dropped, filled in firing order, tagged, pulls typed, the deck
// follows, and the PDF says it all.
import { readFile } from 'node:fs/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type App, startApp } from './harness.ts'
import { pdfText } from './pdf-text.ts'
import { testPhotos } from './photos.ts'

let app: App
beforeAll(async () => {
  app = await startApp()
})
afterAll(() => app.close())

const bore = (cylinder: number) => app.page.locator(`[data-bore="${cylinder}"]`)

async function drop(photos: { name: string; bytes: Buffer }[], target: string): Promise<void> {
  const data = await app.page.evaluateHandle(
    files => {
      const transfer = new DataTransfer()
      for (const { name, base64 } of files)
        transfer.items.add(
          new File([Uint8Array.from(atob(base64), letter => letter.charCodeAt(0))], name, {
            type: 'image/jpeg',
          }),
        )
      return transfer
    },
    photos.map(({ name, bytes }) => ({ name, base64: bytes.toString('base64') })),
  )
  await app.page.dispatchEvent(target, 'drop', { dataTransfer: data })
}

describe('from a rough engine to a report', () => {
  it('makes a job for a vee eight', async () => {
    const { page } = app
    await page.getByRole('button', { name: 'New job' }).first().click()
    await page.getByLabel('Complaint').fill('Shakes at idle, <b>smells</b> of fuel')
    await page.getByLabel('Vehicle, boat or machine').fill('Parade float tractor')
    await page.getByLabel('VIN').fill('1M8GDM9AXKP042788')
    await page.getByText('The check digit fits.').waitFor()
    await page.getByLabel('VIN').fill('1M8GDM9AXKP042789')
    await page.getByText('The ninth character should be').waitFor()
    await page.getByRole('textbox', { name: 'Odometer' }).fill('120,500')
    await page.getByText('without a thousands sign').waitFor()
    await page.getByRole('textbox', { name: 'Odometer' }).fill('120500')
    await page.getByRole('radiogroup', { name: 'Arrangement' }).getByText('Vee').click()
    await page.getByRole('radiogroup', { name: 'Cylinders' }).getByText('8', { exact: true }).click()
    await page.getByText('Vee eight, odd and even banks').first().click()
    await page.getByRole('button', { name: 'Make the job' }).click()
    await bore(8).waitFor()
    expect(await page.locator('[data-bore]').count()).toBe(8)
  })

  it('takes eight dropped photos in and fills the slots in firing order', async () => {
    const { page } = app
    await drop(await testPhotos(8), '.plugs-panel')
    await page.getByText('8 photos added.').waitFor()
    await page.getByRole('button', { name: 'Fill slots' }).click()
    await page.getByLabel('firing order').check()
    await page.getByText('8 of 8 photos placed.').waitFor()
    await page.getByRole('dialog').getByRole('button', { name: 'Fill slots' }).click()
    await page.locator('.unsorted').waitFor({ state: 'detached' })
    const firing = await page.getByRole('button', { name: 'Firing path' }).getAttribute('title')
    const order = (/[\d-]+$/.exec(firing ?? '')?.[0] ?? '').split('-').map(Number)
    expect(order).toHaveLength(8)
    for (const [at, cylinder] of order.entries()) {
      await bore(cylinder).click()
      await page
        .locator('.shot-facts')
        .getByText(`IMG_${String(at + 1).padStart(4, '0')}.jpg`)
        .waitFor()
    }
  })

  it('reports the same photos as duplicates and adds none of them', async () => {
    const { page } = app
    await drop(await testPhotos(2), '.plugs-panel')
    await page.getByText('0 photos added, 2 not.').waitFor()
    await page.getByText('same photo as IMG_0001.jpg').waitFor()
    expect(await page.locator('.unsorted').count()).toBe(0)
  })

  it('tags by key and by mouse, several at once, and the deck follows', async () => {
    const { page } = app
    await bore(1).click()
    await page.locator('[data-slot="1"]').focus()
    await page.keyboard.press('n')
    await expect.poll(() => bore(1).getAttribute('aria-label')).toContain('sound')
    // After a tag the next plug is selected.
    await expect.poll(() => bore(2).getAttribute('aria-selected')).toBe('true')
    await bore(3).click()
    await bore(5).click({ modifiers: ['Shift'] })
    await page.getByRole('button', { name: /^oil-wetted/ }).click()
    await expect.poll(() => bore(3).getAttribute('aria-label')).toContain('fault')
    await expect.poll(() => bore(5).getAttribute('aria-label')).toContain('fault')
    await page.getByRole('button', { name: /^Undo/ }).click()
    await expect.poll(() => bore(3).getAttribute('aria-label')).toContain('unknown')
    await page.getByRole('button', { name: /^Redo/ }).click()
    await expect.poll(() => bore(5).getAttribute('aria-label')).toContain('fault')
    await bore(7).click()
    await page.getByRole('button', { name: /oil in the plug well/ }).click()
    await expect.poll(() => bore(7).getAttribute('aria-label')).toContain('watch')
  })

  it('types two pulls a hole with digits and Enter alone', async () => {
    const { page } = app
    await page.getByRole('link', { name: 'Gauges' }).click()
    await page.getByText('Caution', { exact: true }).waitFor()
    await page.getByLabel('First puff, cylinder 1, psi').focus()
    for (let round = 0; round < 2; round += 1)
      for (let cylinder = 1; cylinder <= 8; cylinder += 1) {
        await page.keyboard.type(cylinder === 4 ? '60' : '118')
        await page.keyboard.press('Enter')
        await page.keyboard.type(cylinder === 4 ? '95' : '150')
        await page.keyboard.press('Enter')
      }
    await expect.poll(() => page.locator('.pull').count()).toBe(16)
    await expect.poll(() => bore(4).getAttribute('aria-label')).toContain('fault')
    await page.getByText('Cylinder 4, share of highest: outside').waitFor()
  })

  it('voids a pull with a reason and keeps it on record', async () => {
    const { page } = app
    await page.locator('.pull').first().click()
    await page.getByRole('button', { name: 'misread the gauge' }).click()
    await page.getByRole('button', { name: 'Void the pull' }).click()
    await expect.poll(() => page.locator('.pull[data-voided="true"]').count()).toBe(1)
    expect(await page.locator('.pull').count()).toBe(16)
  })

  it('saves a PDF whose text holds complaint, findings, numbers and no markup', async () => {
    const { page } = app
    await page.getByRole('link', { name: 'Write-up' }).click()
    await page.getByLabel('Work done').fill('Renewed plugs 3 and 5.')
    await page.getByLabel('Work done').blur()
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save PDF' }).click(),
    ])
    expect(download.suggestedFilename()).toMatch(/^\d{4}-\d{2}-\d{2}-parade-float-tractor-shop\.pdf$/)
    const bytes = await readFile(await download.path())
    const text = await pdfText(bytes)
    for (const words of [
      'Parade float tractor',
      'Shakes at idle, <b>smells</b> of fuel',
      'Cylinder 4: fault',
      '95 psi',
      'Renewed plugs 3 and 5.',
      'Cautions',
      'Page 1 of',
    ])
      expect(text).toContain(words)
    expect(bytes.toString('latin1')).not.toMatch(/\/(JavaScript|JS|Launch|EmbeddedFile|URI)\b/)
  })

  it('has everything after kill -9 of the host', async () => {
    await app.restart('SIGKILL')
    const { page } = app
    await page.locator('.job-open').click()
    await expect.poll(() => bore(4).getAttribute('aria-label')).toContain('fault')
    await page.getByRole('link', { name: 'Gauges' }).click()
    await expect.poll(() => page.locator('.pull').count()).toBe(16)
  })

  it('asked nothing of the network and broke no rule of its own', () => {
    expect(app.foreign).toEqual([])
    expect(app.complaints).toEqual([])
  })
})
