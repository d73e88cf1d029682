import { setTimeout as pause } from 'node:timers/promises'
import { addArea } from '@glandkeeper/contract/areas'
import { historyCsv, valvesCsv } from '@glandkeeper/fixtures/demo-plant/csv'
import { demoPlant, demoSeed } from '@glandkeeper/fixtures/demo-plant/demo-plant'
import { inject } from 'vitest'
import { aServer, aServerOn, type Register, type TestServer } from './a-server.ts'
import { aCopy, aCopyToKeep } from './a-store.ts'
import { applied, checked } from './import-file.ts'

const plant = demoPlant({ seed: demoSeed, endsOn: '2026-05-04' })

/** Valves of the small plant, and of the one that fills more than a page of a pocket. */
export type PlantSize = 25 | 62

/** Plants of this process, each brought in once: that takes four seconds, and a copy of it a tenth of one. */
const plants = new Map<string, Promise<Register>>()

/** A server with some valves of the demo plant and their six years; the fit that follows every import is over. */
export async function aServerWithPlant(count: PlantSize): Promise<TestServer> {
  const key = `${count} ${inject('database').base}`
  const kept = plants.get(key) ?? aPlant(count)
  plants.set(key, kept)
  const { databaseUrl, ...site } = await kept
  return aServerOn({ databaseUrl: await aCopy(databaseUrl), ...site })
}

/** Brought in as a planner would. */
async function aPlant(count: PlantSize): Promise<Register> {
  const server = await aServer({ databaseUrl: await aCopyToKeep() })
  for (const body of plant.areas.filter(({ code }) => code !== 'BH')) await server.expectOk('planner', addArea, { body })
  const valves = plant.valves.filter((_, index) => index % Math.floor(plant.valves.length / count) === 0).slice(0, count)
  const tags = new Set(valves.map(({ tag }) => tag))
  const history = plant.history.filter(({ tag }) => tags.has(tag))
  await applied(server, await checked(server, 'valves', valvesCsv(valves)), 'whole file')
  await applied(server, await checked(server, 'history', historyCsv(history)), 'whole file')
  await fitted(server)
  await server.stop()
  const { databaseUrl, siteId, personIds } = server
  return { databaseUrl, siteId, personIds }
}

/** Until no fit runs: the forecasts of a valve may else differ between two requests. */
export async function fitted({ fits, siteId }: TestServer): Promise<void> {
  while (fits.progressOf(siteId) !== null) await pause(20)
}
