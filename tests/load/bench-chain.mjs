import { mkdtempSync, rmSync } from 'node:fs'
import { cpus, tmpdir } from 'node:os'
import path from 'node:path'
import { Proving } from '../../apps/server/dist/features/evidence/index.js'
import { openStore } from '../../apps/server/dist/platform/store.js'
import { aLongChain } from './a-long-chain.mjs'

const TARGET_SECONDS = 20
const TARGET_EVENTS = 1_000_000
const CANCEL_TARGET_MILLISECONDS = 100

const root = path.resolve(import.meta.dirname, '../..')
const argument = process.argv.indexOf('--events')
const events = argument > 0 ? Number(process.argv[argument + 1]) : TARGET_EVENTS

const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-chain-'))
const databaseUrl = `file:${path.join(folder, 'register.db')}`
let failed = false
try {
  const built = await timed(() => aLongChain(path.join(folder, 'register.db'), path.join(root, 'prisma'), events))
  console.log(`${events} events, ${cpus()[0]?.model}, Node ${process.versions.node}; written in ${inSeconds(built.milliseconds)}`)
  const store = await openStore(databaseUrl)
  const proving = new Proving({ store, databaseUrl, clock: () => new Date(), secret: 'bench', log: console })
  await proveOnce(proving, built.answer)
  await cancelOne(proving, built.answer)
  await proving.close()
  await store.close()
} finally {
  rmSync(folder, { recursive: true })
}
process.exitCode = failed ? 1 : 0

/** The proof as the server makes it: in its thread, with its progress heard, and the head signed at the end. */
async function proveOnce(proving, by) {
  const shares = new Set()
  const listening = setInterval(() => shares.add(proving.of(by.siteId).share), 100)
  const { milliseconds } = await timed(() => proving.start(by))
  clearInterval(listening)
  const { proof } = proving.of(by.siteId)
  console.log(`proved in ${inSeconds(milliseconds)}, ${shares.size} steps of progress seen: ${proof?.says}`)
  if (!proof?.isWhole || proof.entries !== events) fail('the chain was not proved')
  const most = (TARGET_SECONDS * Math.max(events, 1)) / TARGET_EVENTS
  if (events >= TARGET_EVENTS && milliseconds > most * 1000) fail(`more than ${most} s`)
}

async function cancelOne(proving, by) {
  const running = proving.start(by)
  await new Promise((resolve) => setTimeout(resolve, 1_500))
  const isRunning = proving.of(by.siteId).share !== null
  const { milliseconds } = await timed(() => proving.cancel(by.siteId))
  await running
  if (!isRunning) return
  console.log(`cancelled in ${Math.round(milliseconds)} ms`)
  if (milliseconds > CANCEL_TARGET_MILLISECONDS) fail(`more than ${CANCEL_TARGET_MILLISECONDS} ms`)
}

async function timed(work) {
  const began = performance.now()
  const answer = await work()
  return { answer, milliseconds: performance.now() - began }
}

function inSeconds(milliseconds) {
  return `${(milliseconds / 1000).toFixed(1)} s`
}

function fail(why) {
  failed = true
  console.error(`bench:chain: ${why}`)
}
