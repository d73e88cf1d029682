// Entries from the outbox of a real browser to a real server, through a wire that cuts, doubles and answers wrongly by
// chance, while the server is killed now and then. Nothing may be lost or doubled. Ends with 1 when something was.
import { mkdirSync, writeFileSync } from 'node:fs'
import { cpus } from 'node:os'
import path from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { chromium } from '@playwright/test'
import { findBrowser } from '../../scripts/browser.mjs'
import { seededRandom } from '../../packages/fixtures/dist/random.js'
import { faultyWire } from './faulty-wire.mjs'
import { loadSource } from './load-source.mjs'
import { recordIn } from './record-in.mjs'

const root = path.resolve(import.meta.dirname, '../..')
const entries = Number(argument('--entries', '10000'))
const seed = Number(argument('--seed', '20261125'))
const PHONES = 2
const random = seededRandom(seed)

const { onDevice, putOnDevice, wake } = await loadSource('tests/e2e/field.ts')
const { OwnServer } = await loadSource('tests/e2e/own-server.ts')
const server = new OwnServer(4187)
await server.start()
const wire = await faultyWire({ port: 4186, upstream: 4187, random })
const browser = await chromium.launch({
  executablePath: (await findBrowser()) || undefined,
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
})
const began = Date.now()
const told = new Map()
const report = await run()
mkdirSync(path.join(root, '.build'), { recursive: true })
writeFileSync(path.join(root, '.build/bench-faults.json'), `${JSON.stringify(report, null, 1)}\n`)
console.log(`${cpus()[0]?.model}, Node ${process.versions.node}, seed ${seed}`)
console.table(report)
process.exitCode = report.lost === 0 && report.doubled === 0 && report.isWhole ? 0 : 1

async function run() {
  try {
    const phones = await Promise.all(Array.from({ length: PHONES }, () => signedInPhone()))
    const valves = (await (await phones[0].request.get('/api/board?limit=500')).json()).rows.map(({ valveId }) => valveId)
    wire.begin()
    const made = []
    for (const [index, page] of phones.entries()) {
      const { person } = await (await fetchQuietly(() => page.request.get(`${server.address}/api/session`))).json()
      const events = Array.from({ length: entries / PHONES }, (_, n) => anEntry(valves[n % valves.length], index, n))
      // A third of what the phone before has is on this one too, as after a phone was restored from a backup.
      const restored = made.slice(0, index === 0 ? 0 : Math.floor(events.length / 3))
      made.push(...events)
      await putOnDevice(page, [...restored, ...events], person.personId)
    }
    const dying = killNowAndThen()
    await Promise.all(phones.map(untilEmpty))
    dying.stop()
    wire.end()
    await dying.done
    return await judged(made)
  } finally {
    await browser.close()
    await wire.close()
    await server.end()
  }
}

async function signedInPhone() {
  const context = await browser.newContext({ baseURL: wire.address })
  const page = await context.newPage()
  await page.goto('/sign-in')
  await page.getByLabel('Sign-in name').fill('fitter')
  await page.getByLabel('Password').fill('tarn-hollow')
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.getByRole('button', { name: 'Sign out' }).waitFor()
  await page.goto('/rounds')
  await page.getByRole('heading', { name: 'Rounds' }).waitFor()
  return page
}

function anEntry(valveId, phone, n) {
  const hex = (value, length) => value.toString(16).padStart(length, '0')
  const id = `019f${hex(phone, 4)}-${hex(seed % 65536, 4)}-7000-8000-${hex(n, 12)}`
  const shared = {
    id,
    version: 1,
    valveId,
    takenAt: new Date(Date.UTC(2026, 6, 1) + n * 60_000).toISOString(),
    device: `phone ${phone}`,
  }
  return n % 3 === 0
    ? { ...shared, kind: 'gland.nipped', turnsLeft: 0.01, turnsRight: 0.01 }
    : { ...shared, kind: 'leak.seen', leak: n % 3 === 1 ? 'damp' : 'dry' }
}

/** Signal comes and goes; each time it comes the page tries again, as it does by itself. */
async function untilEmpty(page) {
  for (;;) {
    await wake(page)
    await pause(700)
    const left = (await onDevice(page)).length
    if (left === 0) return
    say(page, left)
    if (Date.now() - began > 1_800_000) throw new Error(`${left} entries are still on a device after half an hour`)
  }
}

/** How far each phone is, now and then. */
function say(page, left) {
  if (Date.now() - (told.get(page) ?? 0) < 5000) return
  told.set(page, Date.now())
  console.log(`${Math.round((Date.now() - began) / 1000)} s: ${left} entries on a device, ${server.kills} kills`)
}

function killNowAndThen() {
  const over = new AbortController()
  const killing = async () => {
    while (!over.signal.aborted) {
      await pause(8000 + random.uniform() * 12_000, undefined, { signal: over.signal }).catch(() => {})
      if (over.signal.aborted) return
      await server.kill()
      await server.start()
    }
  }
  return { done: killing(), stop: () => over.abort() }
}

async function judged(made) {
  const { ids, isWhole } = await recordIn(server.folder)
  const count = new Map()
  for (const id of ids) count.set(id, (count.get(id) ?? 0) + 1)
  return {
    entries: made.length,
    lost: made.filter(({ id }) => !count.has(id)).length,
    doubled: made.filter(({ id }) => (count.get(id) ?? 0) > 1).length,
    isWhole,
    kills: server.kills,
    ...wire.counts(),
    seconds: Math.round((Date.now() - began) / 1000),
  }
}

async function fetchQuietly(ask) {
  for (let tries = 0; ; tries++) {
    try {
      return await ask()
    } catch (error) {
      if (tries > 50) throw error
      await pause(200)
    }
  }
}

function argument(name, otherwise) {
  const at = process.argv.indexOf(name)
  return at > 0 ? process.argv[at + 1] : otherwise
}
