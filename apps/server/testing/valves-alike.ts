import { addValve } from '@glandkeeper/contract/valves'
import { aValve, type ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import { newId } from '../src/platform/ids.ts'
import { aServer, type TestServer } from './a-server.ts'

/** A valve of the boiler house. */
export const add = (server: TestServer, overrides: ValveOverrides) =>
  server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', ...overrides }) })

/** Valves like the first one but for tag and place in the walk, as rows alone: hundreds through the API take long. */
export async function addLike(server: TestServer, tags: readonly string[]): Promise<void> {
  const row = (await server.store.read.valve.findFirst({ orderBy: { walkPosition: 'asc' } }))!
  const data = tags.map((tag, index) => ({ ...row, id: newId(), tag, walkPosition: row.walkPosition + 1 + index }))
  await server.store.write((write) => write.valve.createMany({ data }))
}

/** A server with so many valves BH-1, BH-2 …, in walking order. */
export async function withValves(count: number, overrides: ValveOverrides = {}): Promise<TestServer> {
  const server = await aServer()
  await add(server, { tag: 'BH-1', walkPosition: 1, level: 0, ...overrides })
  await addLike(
    server,
    Array.from({ length: count - 1 }, (_, index) => `BH-${index + 2}`),
  )
  return server
}
