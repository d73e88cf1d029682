import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { cpus, tmpdir } from 'node:os'
import path from 'node:path'
import { monitorEventLoopDelay } from 'node:perf_hooks'
import { ImportRuns } from '../../apps/server/dist/features/imports/index.js'
import { boardPage, boardSummary } from '../../apps/server/dist/features/board/queries.js'
import { appendEvents } from '../../apps/server/dist/features/events/index.js'
import { forecastBasis } from '../../apps/server/dist/features/glands/index.js'
import { newId } from '../../apps/server/dist/platform/ids.js'
import { migrateSqlite } from '../../apps/server/dist/platform/migrations.js'
import { openStore } from '../../apps/server/dist/platform/store.js'
import { aNip, aReading } from '../../packages/fixtures/dist/a-reading.js'
import { manyValvesCsv } from '../../packages/fixtures/dist/many-valves.js'
import { bareBoard, bareIntake, openBare } from './bare.mjs'
import { alternately } from './timing.mjs'

const root = path.resolve(import.meta.dirname, '../..')
const argument = process.argv.indexOf('--valves')
const valveCount = argument > 0 ? Number(process.argv[argument + 1]) : 100_000
const ENTRIES = 400
const HISTORY = 80
const histories = []

const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-bench-'))
const file = path.join(folder, 'register.db')
const clock = () => new Date('2026-05-04T09:00:00Z')
await migrateSqlite(file, path.join(root, 'prisma'), clock)
const store = await openStore(`file:${file}`)
const siteId = newId()
const personId = newId()
await store.write(async (write) => {
  await write.site.create({
    data: { id: siteId, name: 'Bench', timeZone: 'Europe/London', createdAt: clock(), readyAt: clock() },
  })
  await write.person.create({
    data: { id: personId, siteId, name: 'Bench', signInName: 'bench', role: 'planner', passwordHash: '', createdAt: clock() },
  })
})

const by = { siteId, personId }
console.log(`${valveCount} valves, ${cpus()[0]?.model}, Node ${process.versions.node}`)
const rows = []
const note = (what, ours, bare = null, unit = 'ms') =>
  rows.push({
    what,
    ours: round(ours),
    bare: bare === null ? '' : round(bare),
    ratio: bare === null ? '' : round(ours / bare),
    unit,
  })

const imported = await importValves()
note('import of the list, rows per second', imported.perSecond, null, '1/s')
note('longest wait of another request meanwhile', imported.longestWait)

const bare = openBare(file, await forecastBasis(store.read, siteId, clock()))
const everything = { order: 'runs out first', offset: 0, limit: 100 }
const deepest = { ...everything, offset: Math.max(valveCount - 100, 0) }
await prepareHistories()
for (const [what, query] of [
  ['board, first page', everything],
  ['board, deepest page', deepest],
]) {
  const [ours, theirs] = await alternately(
    20,
    () => boardPage(store.read, siteId, query),
    () => bareBoard(bare, siteId, query),
  )
  note(what, ours, theirs)
}
const [byTag] = await alternately(5, () => boardPage(store.read, siteId, { ...everything, order: 'tag' }))
note('board by tag, first page', byTag)
const [found] = await alternately(5, () => boardPage(store.read, siteId, { ...everything, find: 'header steam' }))
note('board, search of two words', found)
const [summary] = await alternately(5, () => boardSummary(store.read, siteId, clock()))
note('board, counts beside the filters', summary)

let taken = 0
const someEntry = () => {
  taken += 1
  return aNip({
    valveId: histories[taken % histories.length],
    takenAt: `2026-05-03T08:${String(Math.floor(taken / 60) % 60).padStart(2, '0')}:${String(taken % 60).padStart(2, '0')}Z`,
    turnsLeft: 0.25,
    turnsRight: 0.25,
    count: taken,
  })
}
const [ours, theirs] = await alternately(
  ENTRIES,
  () => store.write((write) => appendEvents(write, by, [someEntry()], clock(), { keepsForecasts: true })),
  () => bareIntake(bare, by, someEntry(), clock()),
)
note(`one entry, on a valve with ${HISTORY} before it`, ours, theirs)

console.table(rows)
const report = { valveCount, entries: ENTRIES, history: HISTORY, node: process.versions.node, processor: cpus()[0]?.model, rows }
mkdirSync(path.join(root, '.build'), { recursive: true })
writeFileSync(path.join(root, '.build/bench.json'), `${JSON.stringify(report, null, 1)}\n`)
bare.close()
await store.close()
rmSync(folder, { recursive: true })

async function importValves() {
  const content = Buffer.from([...manyValvesCsv(valveCount)].join(''))
  const id = newId()
  await store.write((write) =>
    write.importRun.create({
      data: {
        id,
        siteId,
        personId,
        kind: 'valves',
        fileName: 'many.csv',
        content,
        columns: '[]',
        step: 'writing',
        mode: 'whole file',
        startedAt: clock(),
        touchedAt: clock(),
      },
    }),
  )
  const delay = monitorEventLoopDelay({ resolution: 5 })
  delay.enable()
  const began = performance.now()
  const runs = new ImportRuns(store, clock, console)
  runs.write(id)
  await runs.idle()
  const seconds = (performance.now() - began) / 1000
  delay.disable()
  const run = await store.read.importRun.findUnique({ where: { id }, omit: { content: true } })
  if (run.step !== 'done' || run.doneCount !== valveCount) throw new Error(`the list was not read: ${run.step} ${run.detail}`)
  return { perSecond: valveCount / seconds, longestWait: delay.max / 1e6 }
}

/** A hundred valves get the history an ordinary valve has after six years. */
async function prepareHistories() {
  const valves = await store.read.valve.findMany({ where: { siteId }, orderBy: { id: 'asc' }, take: 100, select: { id: true } })
  histories.push(...valves.map((valve) => valve.id))
  for (const valveId of histories) {
    const events = Array.from({ length: HISTORY }, (_, n) =>
      aReading({
        valveId,
        takenAt: new Date(Date.UTC(2020, 0, 1) + n * 28 * 86_400_000).toISOString(),
        gapLeft: 18 - n / 8,
        gapRight: 18 - n / 8,
      }),
    )
    await store.write((write) => appendEvents(write, by, events, clock(), { keepsForecasts: false }))
  }
}

function round(value) {
  return value >= 100 ? Math.round(value) : Number(value.toPrecision(3))
}
