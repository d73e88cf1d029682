import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { defineConfig, devices } from '@playwright/test'

const root = path.resolve(import.meta.dirname, '../..')
const port = 4179
const browser = process.env['GLANDKEEPER_BROWSER']

const phone = { ...devices['Pixel 7'], viewport: { width: 390, height: 844 } }
/** Where the run keeps its register; its workers read this file too, and find it in their environment. */
const folder = (process.env['GLANDKEEPER_E2E_FOLDER'] ??= mkdtempSync(path.join(tmpdir(), 'glandkeeper-e2e-')))
const TIMED = /with a slow processor/

export default defineConfig({
  testDir: import.meta.dirname,
  outputDir: path.join(root, 'test-results'),
  // One register for the run: tests make the valves they change, and look at the demo plant's.
  workers: 2,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  forbidOnly: process.env['CI'] !== undefined,
  reporter: [['list'], ['json']],
  use: {
    baseURL: `http://127.0.0.1:${port}`,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    // Keeping a trace of every test costs a tenth of the run: `--trace on` when one is looked into.
    screenshot: 'only-on-failure',
    launchOptions: {
      ...(browser && { executablePath: browser }),
      // Keep the browser off the network: the tests need none but this machine.
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
  projects: [
    // After all others, with nothing beside it.
    {
      name: 'timed',
      dependencies: ['desk', 'phone'],
      testMatch: /fitter\.uses-one-hand\.spec\.ts/,
      grep: TIMED,
      use: phone,
    },
    {
      name: 'desk',
      testMatch: /(planner|engineer|everybody)\..*spec\.ts/,
      // What the page keeps for the field is tried by the fitter's tests; here each new browser would fetch it all for nothing.
      use: { viewport: { width: 1280, height: 900 }, serviceWorkers: 'block' },
    },
    { name: 'phone', testMatch: /(fitter|everybody)\..*spec\.ts/, grepInvert: TIMED, use: phone },
  ],
  webServer: {
    command: `"${process.execPath}" "${path.join(import.meta.dirname, 'fresh-server.mjs')}"`,
    url: `http://127.0.0.1:${port}/api/health`,
    timeout: 120_000,
    reuseExistingServer: false,
    env: { PORT: String(port), GLANDKEEPER_DEMO_PASSWORD: 'tarn-hollow', GLANDKEEPER_DEMO: 'on', GLANDKEEPER_DATA: folder },
    stdout: 'ignore',
  },
})
