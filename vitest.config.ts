// One runner for every suite; each suite is a project with its own limits.
import { defineConfig } from 'vitest/config'

const node = { environment: 'node' as const }

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          ...node,
          name: 'unit',
          include: ['{shared,electron,renderer,model,scripts}/**/*.test.{ts,tsx}'],
          testTimeout: 20_000,
        },
      },
      { test: { ...node, name: 'reference', include: ['tests/reference/**/*.test.ts'] } },
      { test: { ...node, name: 'contract', include: ['tests/contract/**/*.test.ts'], testTimeout: 30_000 } },
      { test: { ...node, name: 'security', include: ['tests/security/**/*.test.ts'], testTimeout: 60_000 } },
      {
        test: {
          ...node,
          name: 'faults',
          include: ['tests/faults/**/*.test.ts'],
          testTimeout: 300_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          ...node,
          name: 'e2e',
          include: ['tests/e2e/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
      {
        test: {
          ...node,
          name: 'bench',
          include: ['tests/bench/**/*.bench.ts'],
          testTimeout: 900_000,
          hookTimeout: 900_000,
          fileParallelism: false,
        },
      },
    ],
  },
})
