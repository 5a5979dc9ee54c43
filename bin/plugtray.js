#!/usr/bin/env node
// The `plugtray` command: starts the built command line.
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const built = new URL('../out/main/cli.js', import.meta.url)
if (existsSync(fileURLToPath(built))) await import(built.href)
else {
  console.error('Plugtray is not built yet. Run `npm start` once, or `npm run build`.')
  process.exitCode = 1
}
