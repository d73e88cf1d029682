// npm test: everything that proves the product, in the order in which a fault is cheapest to find.
// `--only types,lint,…` runs some of it. Ends with the plain line `N passed, N failed`.
import { spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import path from 'node:path'
import { findBrowser } from './browser.mjs'
import { checkNode, ensureBuilt, ensureInstalled, root, say } from './setup.mjs'

checkNode()
ensureInstalled()
ensureBuilt('clients')

const reports = path.join(root, '.build/reports')
mkdirSync(reports, { recursive: true })
const bin = (file) => path.join(root, 'node_modules', file)
const node = (args, env = {}) =>
  spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env } }).status === 0

/** What a command that runs beside others says is kept until it has ended. */
const aside = (args) =>
  new Promise((resolve) => {
    const said = []
    const child = spawn(process.execPath, args, { cwd: root })
    child.stdout.on('data', (text) => said.push(text))
    child.stderr.on('data', (text) => said.push(text))
    child.once('close', (status) => {
      process.stderr.write(Buffer.concat(said))
      resolve(status === 0)
    })
  })

/** A check that passes or fails as a whole. */
const whole = (work) => async () => ((await work()) ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 })

/** These only read: beside each other they keep every processor busy. */
const readers = {
  format: whole(() => aside([bin('oxfmt/bin/oxfmt'), '--list-different'])),
  lint: whole(() => aside([bin('oxlint/bin/oxlint'), '--type-aware', '--deny-warnings'])),
  boundaries: whole(() => aside(['scripts/boundaries.mjs'])),
  'dead-code': whole(() => aside([bin('knip/bin/knip.js'), '--no-progress'])),
}
const steps = {
  types: whole(() => node([bin('typescript7/bin/tsc'), '-b']) && node([bin('typescript7/bin/tsc'), '-p', 'tests/tsconfig.json'])),
  ...readers,
  tests: () => vitest(),
  browser: () => browserTests(),
}

function vitest() {
  // The recovery tests kill the built server.
  ensureBuilt('server')
  const report = freshReport('tests')
  node([bin('vitest/vitest.mjs'), 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`])
  if (!existsSync(report)) return { passed: 0, failed: 1 }
  const { numPassedTests, numFailedTests, numFailedTestSuites, success } = JSON.parse(readFileSync(report, 'utf8'))
  const failed = numFailedTests || numFailedTestSuites
  // A run that found no test, or failed outside of one, has not passed.
  return { passed: numPassedTests, failed: success && numPassedTests > 0 ? failed : Math.max(failed, 1) }
}

async function browserTests() {
  ensureBuilt('server', 'web')
  const report = freshReport('browser')
  const browser = await findBrowser()
  const ok = node([bin('@playwright/test/cli.js'), 'test', '--config', 'tests/e2e/playwright.config.ts'], {
    GLANDKEEPER_BROWSER: browser,
    PLAYWRIGHT_JSON_OUTPUT_NAME: report,
  })
  if (!existsSync(report)) return { passed: 0, failed: 1 }
  const { expected, unexpected, flaky } = JSON.parse(readFileSync(report, 'utf8')).stats
  const failed = unexpected + flaky
  return { passed: expected, failed: ok && expected > 0 ? failed : Math.max(failed, 1) }
}

function freshReport(name) {
  const file = path.join(reports, `${name}.json`)
  rmSync(file, { force: true })
  return file
}

const asked = process.argv.includes('--only') ? process.argv[process.argv.indexOf('--only') + 1].split(',') : Object.keys(steps)
const unknown = asked.filter((name) => !(name in steps))
if (unknown.length > 0) {
  console.error(`glandkeeper: no step is called ${unknown.join(', ')}; there are: ${Object.keys(steps).join(', ')}`)
  process.exit(2)
}

const total = { passed: 0, failed: 0 }
const rounds = [['types'], Object.keys(readers), ['tests'], ['browser']]
  .map((round) => round.filter((name) => asked.includes(name)))
  .filter((round) => round.length > 0)
for (const [index, round] of rounds.entries()) {
  say(`${index + 1} of ${rounds.length}: ${round.join(', ')}`)
  await Promise.all(round.map(run))
}
console.log(`${total.passed} passed, ${total.failed} failed`)
process.exit(total.failed === 0 ? 0 : 1)

async function run(name) {
  const began = Date.now()
  const { passed, failed } = await steps[name]()
  total.passed += passed
  total.failed += failed
  say(`${name}: ${passed} passed, ${failed} failed, ${Math.round((Date.now() - began) / 1000)} s`)
}
