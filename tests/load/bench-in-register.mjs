// The plan of repacks as the server makes it: read from a real register in its thread, while other requests go on.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { boardPage } from '../../apps/server/dist/features/board/queries.js'
import { RepackPlanning } from '../../apps/server/dist/features/repack-plans/index.js'
import { makeFirstSite } from '../../apps/server/dist/features/sites/first-site.js'
import { newId } from '../../apps/server/dist/platform/ids.js'
import { migrateSqlite } from '../../apps/server/dist/platform/migrations.js'
import { openStore } from '../../apps/server/dist/platform/store.js'

const LONGEST_WAIT_MS = 50
const LONGEST_CANCEL_MS = 100
const PORTION = 2_000
const root = path.resolve(import.meta.dirname, '../..')
const clock = () => new Date()

/** @returns rows with their misses, as the other parts of the benchmark give them */
export async function benchInRegister({ isQuick }) {
  const count = isQuick ? 2_000 : 20_000
  const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-bench-'))
  const { store, databaseUrl } = await demoRegister(folder)
  try {
    const { id: siteId } = await store.read.site.findFirst()
    const { id: personId } = await store.read.person.findFirst({ where: { siteId } })
    await store.write((write) => write.site.update({ where: { id: siteId }, data: { nextStopOn: null } }))
    await grow(store, siteId, count)
    sweep()
    const measured = await measure({ store, databaseUrl, by: { siteId, personId }, count })
    print(measured)
    return [{ ...measured, misses: missesOf(measured) }]
  } finally {
    await store.close()
    rmSync(folder, { recursive: true, force: true })
  }
}

/** The rows the register grew from are of this benchmark, and no server would have to sweep them away meanwhile. */
function sweep() {
  setFlagsFromString('--expose-gc')
  runInNewContext('gc')()
}

async function demoRegister(folder) {
  const file = path.join(folder, 'glandkeeper.db')
  await migrateSqlite(file, path.join(root, 'prisma'), clock)
  const databaseUrl = `file:${file}`
  const store = await openStore(databaseUrl)
  await makeFirstSite(store, { demo: true, demoPassword: 'tarn-hollow', dataFolder: folder, databaseUrl }, clock, () => {})
  return { store, databaseUrl }
}

/** The demo plant over and over, each copy with boundaries of its own. */
async function grow(store, siteId, count) {
  const rows = await store.read.valve.findMany({ where: { siteId }, include: { state: true } })
  const valves = []
  const states = []
  for (let copy = 1; rows.length + valves.length < count; copy += 1)
    for (const { state, ...valve } of rows.slice(0, count - rows.length - valves.length)) {
      const id = newId()
      const isolationBoundary = valve.isolationBoundary && `${valve.isolationBoundary} ${copy}`
      valves.push({ ...valve, id, tag: `${valve.tag}-${copy}`, isolationBoundary })
      if (state) states.push({ ...state, valveId: id })
    }
  for (const [table, all] of [
    ['valve', valves],
    ['valve_state', states],
  ])
    for (let from = 0; from < all.length; from += PORTION)
      await store.write((write) => write.insertRows(table, all.slice(from, from + PORTION)))
  const times = count / rows.length
  const hours = { fittingHours: { multiply: times }, scaffoldingHours: { multiply: times }, isolatingHours: { multiply: times } }
  await store.write((write) => write.outage.updateMany({ where: { siteId }, data: hours }))
}

const asked = { name: 'Bench', weeks: 78, objective: 'chance', whatIf: null, basedOn: null }

/** Milliseconds of one page of the board, and a breath before the next. */
async function pageOfBoard(store, { siteId }) {
  const from = performance.now()
  await boardPage(store.read, siteId, { order: 'runs out first', offset: 0, limit: 100 })
  const waited = performance.now() - from
  await new Promise((resolve) => setTimeout(resolve, 20))
  return waited
}

/** As many pages as go beside a planning, by themselves: what a wait means on this machine. */
async function alone(store, by) {
  const waits = []
  while (waits.length < 750) waits.push(await pageOfBoard(store, by))
  return Math.max(...waits)
}

async function measure({ store, databaseUrl, by, count }) {
  const aloneMs = await alone(store, by)
  const planning = new RepackPlanning({ store, databaseUrl, clock, log: console })
  const started = performance.now()
  const done = planning.start(by, asked)
  const waits = []
  while (planning.progressOf(by.siteId).share !== null) {
    waits.push(await pageOfBoard(store, by))
  }
  await done
  const seconds = (performance.now() - started) / 1000
  const { planId, fault } = planning.progressOf(by.siteId)
  if (fault !== null || planId === null) throw new Error(fault ?? 'no plan was made')
  const valves = await store.read.plannedRepack.count({ where: { planId } })
  const cancelMs = await cancelled(planning, by)
  await planning.close()
  return {
    count,
    valves,
    seconds,
    longestWaitMs: Math.max(...waits),
    middleWaitMs: waits.toSorted((one, other) => one - other)[waits.length >> 1],
    pages: waits.length,
    aloneMs,
    cancelMs,
  }
}

/** In the middle of the search: when half of the time to its end is over. */
async function cancelled(planning, by) {
  void planning.start(by, asked)
  while ((planning.progressOf(by.siteId).share ?? 1) < 0.3) await new Promise((resolve) => setTimeout(resolve, 5))
  const from = performance.now()
  if (!(await planning.cancel(by.siteId))) throw new Error('nothing was left to cancel')
  return performance.now() - from
}

function missesOf({ count, longestWaitMs, cancelMs }) {
  const misses = []
  if (longestWaitMs > LONGEST_WAIT_MS)
    misses.push(
      `${count} valves in a register: a page waited ${longestWaitMs.toFixed(0)} ms for the planning, not ${LONGEST_WAIT_MS}`,
    )
  if (cancelMs > LONGEST_CANCEL_MS)
    misses.push(`${count} valves in a register: cancelling took ${cancelMs.toFixed(0)} ms, not ${LONGEST_CANCEL_MS}`)
  return misses
}

function print({ count, valves, seconds, longestWaitMs, middleWaitMs, pages, aloneMs, cancelMs }) {
  console.log(`\nrepacks planned from a register of ${count} valves, in the server's thread`)
  console.log(`  ${valves} valves planned in ${seconds.toFixed(1)} s, reading and writing with it`)
  console.log(
    `  ${pages} pages of the board meanwhile, the longest wait ${longestWaitMs.toFixed(0)} ms (at most ${LONGEST_WAIT_MS}), the middle one ${middleWaitMs.toFixed(0)} ms`,
  )
  console.log(`  as many without a planning: the longest ${aloneMs.toFixed(0)} ms`)
  console.log(`  cancelled in the middle of the search within ${cancelMs.toFixed(0)} ms (at most ${LONGEST_CANCEL_MS})`)
}
