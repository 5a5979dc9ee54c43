// `npm test`: everything that must hold, in one go on a fresh clone. Stops at the first step that fails.
// Arguments are passed on to the test runner, e.g. `npm test -- --project unit`.
import process from 'node:process'
import { installPackages, requireChromium, requireNode, show } from './setup.js'

requireNode()
installPackages()
const chromium = requireChromium()

/** @type {[name: string, command: string, args: string[]][]} */
const steps = [
  ['types', 'tsc', []],
  ['types of shared/ without Node and DOM', 'tsc', ['-p', 'shared']],
  ['lint and import rules', 'oxlint', ['--deny-warnings']],
  ['format', 'biome', ['format']],
  ['unused files, exports and packages', 'knip', []],
  ['build', 'electron-vite', ['build']],
]

for (const [name, command, args] of steps) {
  console.log(`\n== ${name}`)
  const status = show('npx', ['--no-install', command, ...args])
  if (status !== 0) {
    console.error(`\nStopped at: ${name}`)
    process.exit(status)
  }
}

console.log('\n== tests')
const passedOn = process.argv.slice(2)
const suites = ['unit', 'reference', 'contract', 'security', 'faults', 'e2e'].flatMap(name => [
  '--project',
  name,
])
process.exit(
  show('npx', ['--no-install', 'vitest', 'run', ...(passedOn.length > 0 ? passedOn : suites)], {
    env: { ...process.env, PLUGTRAY_CHROMIUM: chromium },
  }),
)
