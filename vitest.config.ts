import { readdirSync, readFileSync } from 'node:fs'
import { defineConfig } from 'vitest/config'

// Workspace packages are tested from their sources: no build stands between an edit and its test.
const resolve = { conditions: ['source', 'module', 'node', 'development|production'] }
const ssr = { resolve: { conditions: ['source', 'module', 'node', 'development|production'] } }
const exclude = ['**/dist/**', '**/node_modules/**', 'tests/e2e/**']

/** Tests of the server that open no register say the same whatever database there is: they run once. */
const withoutRegister = readdirSync('apps/server/src', { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.test.ts'))
  .map((file) => `apps/server/src/${file.replaceAll('\\', '/')}`)
  .filter((file) => !/testing\/|inject\('database'\)/.test(readFileSync(file, 'utf8')))

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
          exclude: [...exclude, ...withoutRegister, '**/*.paper.test.ts'],
          globalSetup: ['apps/server/testing/postgresql.ts'],
          testTimeout: 30_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
})
