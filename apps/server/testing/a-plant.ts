import { setTimeout as pause } from 'node:timers/promises'
import { addArea } from '@glandkeeper/contract/areas'
import { historyCsv, valvesCsv } from '@glandkeeper/fixtures/demo-plant/csv'
import { demoPlant, demoSeed } from '@glandkeeper/fixtures/demo-plant/demo-plant'
import { aServer, type TestServer } from './a-server.ts'
import { applied, checked } from './import-file.ts'

const plant = demoPlant({ seed: demoSeed, endsOn: '2026-05-04' })

/** A server with some valves of the demo plant and their six years, brought in as a planner would; the fit an import starts is over. */
export async function aServerWithPlant(count: number): Promise<TestServer> {
  const server = await aServer()
  for (const body of plant.areas.filter(({ code }) => code !== 'BH')) await server.expectOk('planner', addArea, { body })
  const valves = plant.valves.filter((_, index) => index % Math.floor(plant.valves.length / count) === 0).slice(0, count)
  const tags = new Set(valves.map(({ tag }) => tag))
  const history = plant.history.filter(({ tag }) => tags.has(tag))
  await applied(server, await checked(server, 'valves', valvesCsv(valves)), 'whole file')
  await applied(server, await checked(server, 'history', historyCsv(history)), 'whole file')
  await fitted(server)
  return server
}

/** Until no fit runs: the forecasts of a valve may else differ between two requests. */
export async function fitted({ fits, siteId }: TestServer): Promise<void> {
  while (fits.progressOf(siteId) !== null) await pause(20)
}
