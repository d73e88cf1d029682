// The large simulation, and what forecasts and the fit of priors cost. Prints tables, writes .build/bench-forecast.json.
// `-- --lives 2000` for a smaller simulation; `-- --only cost` or `-- --only simulation` for one half.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { cpus, tmpdir } from 'node:os'
import path from 'node:path'
import { Worker } from 'node:worker_threads'
import { ImportRuns } from '../../apps/server/dist/features/imports/index.js'
import { manyValvesCsv } from '../../packages/fixtures/dist/many-valves.js'
import { loadSimulation, manyLives } from './simulated-lives.mjs'
import { boardPage } from '../../apps/server/dist/features/board/queries.js'
import { migrateSqlite } from '../../apps/server/dist/platform/migrations.js'
import { openStore } from '../../apps/server/dist/platform/store.js'
import { fitPriors } from '../../packages/engines/dist/wear/fit.js'
import { forecastReserve } from '../../packages/engines/dist/wear/forecast.js'
import { defaultPrior } from '../../packages/engines/dist/wear/prior.js'

const root = path.resolve(import.meta.dirname, '../..')
const FORECASTS = 100_000
const FIT_LIVES = 64_500
const YEAR = 365.25
const DAY = 86_400_000

const { base, livesOf, scenarios, tooHard, watchedLives } = await loadSimulation('plant.ts')
const { scoresOf } = await loadSimulation('score.ts')

console.log(`${cpus()[0]?.model}, Node ${process.versions.node}`)
const only = argument('--only', '')
const report = { node: process.versions.node, processor: cpus()[0]?.model }
if (only !== 'cost') report.simulation = simulation(Number(argument('--lives', '6000')))
if (only !== 'simulation') report.cost = await cost()
mkdirSync(path.join(root, '.build'), { recursive: true })
writeFileSync(path.join(root, '.build/bench-forecast.json'), `${JSON.stringify(report, null, 1)}\n`)

/** Every scenario with many lives, other seeds than the test's. */
function simulation(count) {
  return [...scenarios, ...tooHard].map((scenario, index) => {
    const fit = fitPriors({ lives: watchedLives(scenario, 1001 + index) })
    if (!fit.ok) throw new Error(fit.problem.detail)
    const scores = scoresOf(livesOf(scenario, 2001 + index, count), fit)
    console.log(`\n${scenario.name}`)
    console.table(
      scores.byReadings.map((score) => ({
        readings: score.readings,
        cases: score.cases,
        'in 80 %': percent(score.within80),
        'in 95 %': percent(score.within95),
        'error, days': Math.round(score.error),
        'straight line, days': Math.round(score.straightLineError),
      })),
    )
    console.log(
      `5 or more readings: error ${Math.round(score5(scores) * 100)} % of a straight line's; ` +
        `chance of running out in a year off by ${scores.yearChanceOff.toFixed(3)}; last readings in their 80 % band: ` +
        percent(fit.quality.lastReadingsWithin80),
    )
    return { scenario: scenario.name, ...scores, quality: fit.quality }
  })
}

async function cost() {
  // First, while this process holds no more than a server does.
  const waits = await waitsWhileFitting()
  const pool = livesOf(base, 31, 2000).map(({ record }, index) => ({
    ...record,
    readings: record.readings.slice(0, 1 + (index % 12)),
  }))
  const lives = pool.filter(({ readings }) => readings.length > 0)
  const inputs = lives.map((life) => {
    const last = life.readings.at(-1).at
    const before = [last + 90 * DAY, last + YEAR * DAY]
    return { life, prior: defaultPrior, earlierLives: [], chances: [0.025, 0.1, 0.5, 0.9, 0.975], before }
  })
  const readings = lives.reduce((sum, life) => sum + life.readings.length, 0) / lives.length
  const seconds = Array.from({ length: 7 }, () => timed(() => forecastMany(inputs, FORECASTS)))

  const many = manyLives(watchedLives(base, 41, 6450), FIT_LIVES)
  let quality = null
  const fitSeconds = timed(() => {
    const fit = fitPriors({ lives: many })
    if (!fit.ok) throw new Error(fit.problem.detail)
    quality = fit.quality
  })
  const rows = [
    {
      what: `${FORECASTS} forecasts, ${readings.toFixed(1)} readings each, 5 dates and 2 chances`,
      seconds: Math.min(...seconds),
      median: seconds.toSorted((one, other) => one - other)[3],
      most: 1.5,
    },
    { what: `fit of ${FIT_LIVES} lives, ${quality.readings} readings`, seconds: fitSeconds, most: 8 },
  ]
  console.table(
    rows.map((row) => ({
      ...row,
      seconds: Number(row.seconds.toFixed(2)),
      ...(row.median && { median: Number(row.median.toFixed(2)) }),
    })),
  )
  console.log(
    `a page of the board while that fit runs in a thread, ${waits.pages} pages: half of them within ` +
      `${waits.median.toFixed(0)} ms, the longest ${waits.longest.toFixed(0)} ms (at most 50)`,
  )
  return { rows, allForecastSeconds: seconds, quality, waitsWhileFittingMs: waits }
}

/** The board of a register of 2,000 valves, asked for every 20 ms while the large fit runs beside it. */
async function waitsWhileFitting() {
  const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-bench-'))
  const file = path.join(folder, 'register.db')
  const clock = () => new Date('2026-05-04T09:00:00Z')
  await migrateSqlite(file, path.join(root, 'prisma'), clock)
  const store = await openStore(`file:${file}`)
  await fillRegister(store, clock)
  const ask = () => boardPage(store.read, 'bench', { order: 'runs out first', offset: 0, limit: 100 })
  // A server that has run for a day is warm.
  for (let page = 0; page < 100; page++) await ask()
  const worker = new Worker(new URL('./fit-in-a-thread.mjs', import.meta.url), { workerData: { count: FIT_LIVES } })
  const said = []
  worker.on('message', (message) => said.push(message))
  const waits = []
  while (said.at(-1) !== 'done') {
    const began = performance.now()
    await ask()
    if (said.length > 0) waits.push(performance.now() - began)
    await new Promise((resolve) => setTimeout(resolve, 20))
  }
  await store.close()
  rmSync(folder, { recursive: true, force: true })
  const inOrder = waits.toSorted((one, other) => one - other)
  return { pages: waits.length, median: inOrder[waits.length >> 1], longest: inOrder.at(-1) }
}

async function fillRegister(store, clock) {
  const made = { createdAt: clock() }
  await store.write(async (write) => {
    await write.site.create({ data: { id: 'bench', name: 'Bench', timeZone: 'Europe/London', readyAt: clock(), ...made } })
    const person = {
      id: 'person',
      siteId: 'bench',
      name: 'Bench',
      signInName: 'bench',
      role: 'planner',
      passwordHash: '',
      ...made,
    }
    await write.person.create({ data: person })
    const file = { id: 'file', siteId: 'bench', personId: 'person', kind: 'valves', fileName: 'many.csv', columns: '[]' }
    const content = Buffer.from([...manyValvesCsv(2000)].join(''))
    const begun = { step: 'writing', mode: 'whole file', startedAt: clock(), touchedAt: clock() }
    await write.importRun.create({ data: { ...file, content, ...begun } })
  })
  const runs = new ImportRuns(store, clock, console)
  runs.write('file')
  await runs.idle()
}

function forecastMany(inputs, count) {
  let sum = 0
  for (let index = 0; index < count; index++) {
    const forecast = forecastReserve(inputs[index % inputs.length])
    if (!forecast.ok) throw new Error(forecast.problem.detail)
    sum += forecast.chances[1].chance
  }
  return sum
}

/** Processor time of this process: what another process takes on the same core does not count. */
function timed(work) {
  const began = process.cpuUsage()
  work()
  return process.cpuUsage(began).user / 1e6
}

function score5({ error, straightLineError }) {
  return error / straightLineError
}

function percent(share) {
  return share === null ? '' : `${(share * 100).toFixed(1)} %`
}

function argument(name, otherwise) {
  const at = process.argv.indexOf(name)
  return at > 0 ? process.argv[at + 1] : otherwise
}
