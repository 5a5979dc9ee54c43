// axe finds nothing on any place, in light and dark, with the demonstration jobs and with an empty catalogue.
import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type App, startApp } from './harness.ts'

const source = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** The rules broken, each with the first element concerned. */
async function violations(app: App): Promise<string[]> {
  await app.page.evaluate(source)
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

const themes = ['light', 'dark'] as const

describe('with the demonstration jobs', () => {
  let app: App
  beforeAll(async () => {
    app = await startApp({ demo: true })
    await app.page.locator('.job-open').nth(4).waitFor({ timeout: 60_000 })
  })
  afterAll(() => app.close())

  it.each(themes)('no place breaks a rule in %s', async theme => {
    const { page } = app
    await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
    await page.getByRole('link', { name: 'Jobs' }).click()
    await page.locator('.job-open').first().waitFor()
    expect(await violations(app)).toEqual([])
    await page.getByRole('link', { name: /Orchard truck/ }).click()
    await page.locator('[data-bore="4"]').click()
    for (const tab of ['Plugs', 'Gauges', 'Causes', 'Write-up']) {
      await page.getByRole('link', { name: new RegExp(`^${tab}`) }).click()
      await page.waitForTimeout(200)
      expect(await violations(app), `${tab} in ${theme}`).toEqual([])
    }
    await page.getByRole('link', { name: /^Gauges/ }).click()
    const tests = page.getByRole('group', { name: 'Test', exact: true }).getByRole('button')
    for (let at = 0; at < (await tests.count()); at += 1) {
      await tests.nth(at).click()
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll<HTMLDetailsElement>('.gauges-panel details'))
          fold.open = true
      })
      expect(await violations(app), `${await tests.nth(at).textContent()} in ${theme}`).toEqual([])
    }
    await tests.getByText('Leak-down').click()
    await page.getByRole('button', { name: 'One cylinder at a time' }).click()
    expect(await violations(app), `the guided walk in ${theme}`).toEqual([])
    await page.getByRole('button', { name: 'One cylinder at a time' }).click()
    await page.getByRole('button', { name: 'Edit job' }).click()
    await page.getByRole('dialog').waitFor()
    expect(await violations(app), `job dialog in ${theme}`).toEqual([])
    await page.keyboard.press('Escape')
    await page.getByRole('link', { name: 'Setup' }).click()
    await page.getByRole('heading', { name: 'Units' }).waitFor()
    expect(await violations(app), `Setup in ${theme}`).toEqual([])
    await page.getByRole('button', { name: 'Keys' }).click()
    await page.getByRole('dialog').waitFor()
    expect(await violations(app), `Keys in ${theme}`).toEqual([])
    await page.keyboard.press('Escape')
  })
})

describe('with an empty catalogue', () => {
  let app: App
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.close())

  it.each(themes)('neither the empty list nor a new job breaks a rule in %s', async theme => {
    const { page } = app
    await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
    await page.getByText('No jobs yet').waitFor()
    expect(await violations(app)).toEqual([])
    await page.getByRole('button', { name: 'New job' }).first().click()
    await page.getByRole('dialog').waitFor()
    expect(await violations(app)).toEqual([])
    await page.keyboard.press('Escape')
  })
})
