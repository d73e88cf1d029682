import { defineConfig } from 'vitest/config'

// Workspace packages are tested from their sources: no build stands between an edit and its test.
const resolve = { conditions: ['source', 'module', 'node', 'development|production'] }
const ssr = { resolve: { conditions: ['source', 'module', 'node', 'development|production'] } }
const exclude = ['**/dist/**', '**/node_modules/**', 'tests/e2e/**']

export default defineConfig({
  test: {
    // Left to itself it keeps one core free, which is half of a machine with two.
    maxWorkers: '100%',
    projects: [
      {
        resolve,
        ssr,
        test: {
          name: 'unit',
          // Pure modules keep nothing between files, and loading them anew for each of two hundred files took minutes.
          isolate: false,
          include: [
            'packages/**/*.test.ts',
            'apps/web/**/*.test.{ts,tsx}',
            'tests/reference/**/*.test.ts',
            'tests/simulation/**/*.test.ts',
            'tests/documents/**/*.test.ts',
          ],
          exclude,
        },
      },
      {
        resolve,
        ssr,
        test: {
          name: 'sqlite',
          // Each file opens its own register; loading the server anew for each took as long as the tests.
          isolate: false,
          include: ['apps/server/**/*.test.ts', 'tests/recovery/**/*.test.ts'],
          exclude,
          globalSetup: ['apps/server/testing/sqlite.ts'],
          testTimeout: 20_000,
          hookTimeout: 60_000,
        },
      },
      {
        resolve,
        ssr,
        test: {
          name: 'postgresql',
          // As for SQLite: each file opens a register of its own.
          isolate: false,
          include: ['apps/server/**/*.test.ts'],
          // What is on paper is the same whatever database it was read from.
          exclude: [...exclude, '**/*.paper.test.ts'],
          globalSetup: ['apps/server/testing/postgresql.ts'],
          testTimeout: 30_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
})
