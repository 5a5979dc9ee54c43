// Takes the README's pictures of every place from a built app on the demonstration jobs: node scripts/take-pictures.js
import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import process from 'node:process'
import { chromium } from 'playwright-core'
import { requireChromium, root } from './setup.js'

const folder = mkdtempSync(join(tmpdir(), 'plugtray-pictures-'))
const out = join(root, 'docs', 'pictures')
mkdirSync(out, { recursive: true })

const host = spawn(
  process.execPath,
  [join(root, 'out/main/browser-host.js'), '--no-open', '--catalogue', join(folder, 'catalogue')],
  {
    stdio: ['ignore', 'pipe', 'inherit'],
  },
)
const link = await new Promise(resolve => {
  let text = ''
  host.stdout.on('data', chunk => {
    text += chunk
    const address = /at (http\S+)/.exec(text)?.[1]
    if (address) resolve(address)
  })
})
const flags = [
  '--headless=new',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]
const browser = await chromium.launch({ executablePath: requireChromium(), args: flags })
const page = await browser.newPage({ viewport: { width: 1280, height: 800 } })
const picture = async name => {
  // Photos are fetched after the place is drawn.
  await page.waitForTimeout(2500)
  await page.screenshot({ path: join(out, `${name}.png`) })
}
const bore = cylinder => page.locator(`[data-bore="${cylinder}"]`)

try {
  await page.goto(link)
  await page.locator('.job-open').nth(4).waitFor({ timeout: 60_000 })
  await picture('jobs')
  await page
    .getByRole('link', { name: /Orchard truck/ })
    .first()
    .click()
  await bore(4).click()
  await picture('plugs')
  for (const name of ['Gauges', 'Causes', 'Write-up']) {
    await page.getByRole('link', { name: new RegExp(`^${name}`) }).click()
    await picture(name.toLowerCase())
  }
  await page.getByRole('link', { name: 'Setup' }).click()
  await picture('setup')
  await page.getByRole('link', { name: 'Jobs' }).click()
  await page.getByRole('button', { name: 'New job' }).first().click()
  await page.getByLabel('Complaint').fill('Shakes at idle')
  await page.getByRole('radiogroup', { name: 'Arrangement' }).getByText('Vee').click()
  await page.getByRole('radiogroup', { name: 'Cylinders' }).getByText('8', { exact: true }).click()
  await picture('new-job')
  await page.keyboard.press('Escape')
  await page.emulateMedia({ colorScheme: 'dark' })
  await page
    .getByRole('link', { name: /Stand-by generator/ })
    .first()
    .click()
  await bore(3).click()
  await picture('plugs-dark')
} finally {
  await browser.close()
  host.kill('SIGTERM')
  host.on('exit', () => rmSync(folder, { recursive: true, force: true }))
}
