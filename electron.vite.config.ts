// Builds the hosts, the preload and the page into out/.
import { copyFileSync, mkdirSync } from 'node:fs'
import { resolve } from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'electron-vite'
import type { Plugin } from 'vite'

const here = import.meta.dirname

/** Files that go out as they stand: the HEIC worker beside the bundles, and the published schema of JOB.json. */
const asTheyStand = [
  ['electron/services/imaging/heic-worker.js', 'out/main/heic-worker.js'],
  ['shared/job/job.schema.json', 'out/job.schema.json'],
] as const

const copyAsTheyStand: Plugin = {
  name: 'copy-as-they-stand',
  closeBundle() {
    mkdirSync(resolve(here, 'out/main'), { recursive: true })
    for (const [from, to] of asTheyStand) copyFileSync(resolve(here, from), resolve(here, to))
  },
}

const mainEntries = {
  ...Object.fromEntries(
    ['main', 'browser-host', 'cli'].map(name => [name, resolve(here, `electron/${name}.ts`)]),
  ),
  'recording-worker': resolve(here, 'electron/services/recordings/recording-worker.ts'),
}

export default defineConfig({
  main: {
    plugins: [copyAsTheyStand],
    build: {
      target: 'node20',
      outDir: 'out/main',
      externalizeDeps: true,
      rollupOptions: {
        input: mainEntries,
        output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'chunks/[name]-[hash].js' },
      },
    },
  },
  preload: {
    build: {
      outDir: 'out/preload',
      externalizeDeps: false,
      rollupOptions: {
        input: { preload: resolve(here, 'electron/preload.ts') },
        external: ['electron'],
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: resolve(here, 'renderer'),
    plugins: [react()],
    build: {
      target: 'es2022',
      minify: true,
      // The page comes from this computer's disk: one file of a megabyte is no burden.
      chunkSizeWarningLimit: 1000,
      outDir: resolve(here, 'out/renderer'),
      emptyOutDir: true,
      rollupOptions: { input: resolve(here, 'renderer/index.html') },
    },
  },
})
