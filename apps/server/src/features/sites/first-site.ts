import { randomInt } from 'node:crypto'
import { mkdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { type Role, roles } from '@glandkeeper/contract/roles'
import { historyCsv, valvesCsv } from '@glandkeeper/fixtures/demo-plant/csv'
import { type DemoPlant, demoPlant, demoSeed } from '@glandkeeper/fixtures/demo-plant/demo-plant'
import type { Config } from '../../config.ts'
import type { Clock } from '../../platform/clock.ts'
import { newId } from '../../platform/ids.ts'
import type { Store } from '../../platform/store.ts'
import { putDemoCrews } from './demo-crews.ts'
import { putDemoLeaks } from './demo-leaks.ts'
import { putDemoStores } from './demo-stores.ts'
import { putDemoOutages } from './demo-outages.ts'
import { createArea } from '../areas/index.ts'
import { Fits } from '../forecasts/index.ts'
import { ImportRuns } from '../imports/index.ts'
import { hashPassword, putPerson } from '../people/index.ts'

export interface SignIn {
  readonly name: string
  readonly role: Role
  readonly signInName: string
  readonly password: string
}

export interface Say {
  (line: string): void
}

const demoPeople: Readonly<Record<Role, string>> = { planner: 'Edda Marlow', fitter: 'R. Oakes', engineer: 'Priya Lindqvist' }

/**
 * Makes the first site of an empty register and says who may sign in: the demo plant with one person of each role,
 * or an empty site with one planner. A start that was cut short is gone on with, under new passwords.
 *
 * @returns the sign-ins made, none when the register was not empty
 */
export async function makeFirstSite(store: Store, config: Config, clock: Clock, say: Say): Promise<SignIn[]> {
  if ((await store.read.site.count({ where: { readyAt: { not: null } } })) > 0) return []
  const site = await beginSite(store, config.demo, clock)
  const signIns = config.demo
    ? roles.map((role) => signInOf(role, demoPeople[role], config.demoPassword))
    : [signInOf('planner', 'Planner')]
  const [keeperId, fitterId] = await putPeople(store, site.id, signIns, clock)
  if (config.demo && keeperId !== undefined && fitterId !== undefined) {
    say('the register is empty: loading the demo plant, Tarn Hollow Board Mill')
    const by = { siteId: site.id, personId: keeperId }
    const plant = await loadDemoPlant(store, config.databaseUrl, by, site.createdAt, clock, say)
    const today = site.createdAt.toISOString().slice(0, 10)
    const hasCrews = (await store.read.crew.count({ where: { siteId: site.id } })) > 0
    if (!hasCrews) await store.write((write) => putDemoCrews(write, by, fitterId, { today, now: clock() }))
    const hasStores = (await store.read.stockItem.count({ where: { siteId: site.id } })) > 0
    if (!hasStores) await store.write((write) => putDemoStores(write, by, { today, now: clock() }))
    const hasOutages = (await store.read.outage.count({ where: { siteId: site.id } })) > 0
    if (!hasOutages) await store.write((write) => putDemoOutages(write, by, { today, now: clock() }))
    const hasRules = (await store.read.leakRule.count({ where: { siteId: site.id } })) > 0
    if (!hasRules) await putDemoLeaks(store, by, plant, { today, clock })
  }
  // Before the register counts as ready: nobody may be locked out by a stop between the two.
  keepSignIns(config.dataFolder, signIns)
  await store.write((write) => write.site.update({ where: { id: site.id }, data: { readyAt: clock() } }))
  return signIns
}

async function loadDemoPlant(
  store: Store,
  databaseUrl: string,
  by: { siteId: string; personId: string },
  endsOn: Date,
  clock: Clock,
  say: Say,
): Promise<DemoPlant> {
  const plant = demoPlant({ seed: demoSeed, endsOn: endsOn.toISOString().slice(0, 10) })
  await store.write(async (write) => {
    const known = await write.area.count({ where: { siteId: by.siteId } })
    for (const area of known === 0 ? plant.areas : []) await createArea(write, by, area, clock())
  })
  for (const [kind, fileName, text] of [
    ['valves', 'tarn-hollow-valves.csv', valvesCsv(plant.valves)],
    ['history', 'tarn-hollow-history.csv', historyCsv(plant.history)],
  ] as const) {
    const counts = await importNow(store, { ...by, kind, fileName, text }, clock)
    say(`${fileName}: ${counts.doneCount} of ${counts.rowCount} rows`)
  }
  say('learning from the history how fast these glands wear')
  const fits = new Fits({ store, databaseUrl, clock, log: console })
  await fits.ask(by.siteId, 'after an import')
  await fits.close()
  return plant
}

/** The demo's files go the way of every file: check, then write, with every fault counted. */
async function importNow(
  store: Store,
  file: { siteId: string; personId: string; kind: 'valves' | 'history'; fileName: string; text: string },
  clock: Clock,
) {
  const { text, ...named } = file
  const id = newId()
  await store.write((write) =>
    write.importRun.create({
      data: {
        ...named,
        id,
        content: Buffer.from(text),
        columns: '[]',
        step: 'writing',
        mode: 'whole file',
        startedAt: clock(),
        touchedAt: clock(),
      },
    }),
  )
  const runs = new ImportRuns(store, clock, console)
  runs.write(id)
  await runs.idle()
  const run = await store.read.importRun.findUniqueOrThrow({ where: { id }, omit: { content: true, badRows: true } })
  if (run.step !== 'done' || run.badCount > 0)
    throw new Error(`the demo plant's ${file.fileName} was not read: ${run.detail} ${run.faults.slice(0, 500)}`)
  return run
}

async function beginSite(store: Store, isDemo: boolean, clock: Clock) {
  const begun = await store.read.site.findFirst({ where: { readyAt: null } })
  if (begun) return begun
  const data = {
    id: newId(),
    name: isDemo ? 'Tarn Hollow Board Mill' : 'Our plant',
    timeZone: 'Europe/London',
    isDemo,
    createdAt: clock(),
    leaksKeptAt: clock(),
  }
  return store.write((write) => write.site.create({ data }))
}

async function putPeople(store: Store, siteId: string, signIns: readonly SignIn[], clock: Clock): Promise<string[]> {
  const people = await Promise.all(
    signIns.map(async ({ name, role, signInName, password }) => ({
      siteId,
      name,
      role,
      signInName,
      passwordHash: await hashPassword(password),
    })),
  )
  return store.write(async (write) => {
    const ids = []
    for (const person of people) ids.push(await putPerson(write, person, clock()))
    return ids
  })
}

function signInOf(role: Role, name: string, password: string | undefined = drawPassword()): SignIn {
  return { name, role, signInName: role, password }
}

/** Five syllables and two digits: to be read from a terminal and typed on a phone. */
function drawPassword(): string {
  const syllable = () => `${'bdfgklmnprstvz'[randomInt(14)]}${'aeiou'[randomInt(5)]}`
  return `${Array.from({ length: 5 }, syllable).join('')}-${String(randomInt(100)).padStart(2, '0')}`
}

function keepSignIns(dataFolder: string, signIns: readonly SignIn[]): void {
  mkdirSync(dataFolder, { recursive: true })
  const lines = signIns.map(({ role, signInName, password }) => `${role}: sign in as ${signInName} with ${password}`)
  writeFileSync(path.join(dataFolder, 'sign-ins.txt'), `${lines.join('\n')}\n`, { mode: 0o600 })
}
