import { sendEvents } from '@glandkeeper/contract/events'
import { aRepack } from '@glandkeeper/fixtures/a-reading'
import type { ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import type { TestServer } from './a-server.ts'
import { add } from './valves-alike.ts'

/** A valve of the boiler house, packed once in March, whose box of 28 in 44 mm takes a cord of 8 mm; tells its id. */
export async function packed(
  server: TestServer,
  tag: string,
  family = 'graphite braid',
  overrides: ValveOverrides = {},
): Promise<string> {
  const { valveId } = await add(server, { tag, ...overrides, gland: { boxBore: 44, ...overrides.gland } })
  const repack = aRepack({ valveId, takenAt: '2026-03-02T07:10:00Z', family })
  await server.expectOk('fitter', sendEvents, { body: { events: [repack] } })
  return valveId
}
