import { sendEvents } from '@glandkeeper/contract/events'
import type { FieldEvent } from '@glandkeeper/contract/events'
import { showLeakStudy, type LeakStudy, type StudyPeriod } from '@glandkeeper/contract/leak-study'
import { addValve } from '@glandkeeper/contract/valves'
import { aValve, type ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import { keepStudy } from '../src/features/leak-study/kept-study.ts'
import { makeStudy } from '../src/features/leak-study/make-study.ts'
import type { Clock } from '../src/platform/clock.ts'
import { aServer, type TestServer } from './a-server.ts'

/** In the morning of a day. */
export const at = (day: string) => `${day}T08:00:00Z`

/** A server whose valves are studied in this thread, which takes less than to start another. */
export async function aStudiedPlant(options: { clock?: Clock } = {}) {
  const server = await aServer(options)
  const add = async (tag: string, more: ValveOverrides = {}) =>
    (await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag, ...more }) })).valveId
  const send = (...events: FieldEvent[]) => server.expectOk('fitter', sendEvents, { body: { events } })
  return { ...server, add, send, study: (period?: StudyPeriod) => studied(server, period) }
}

/** Studies a site as it is now, and reads the study as a page does. */
export async function studied(server: TestServer, period: StudyPeriod = 'all'): Promise<LeakStudy> {
  await study(server)
  const { study: shown } = await server.expectOk('engineer', showLeakStudy, { query: { period } })
  if (shown === null) throw new Error('the study was not kept')
  return shown
}

export async function study({ store, siteId, now }: TestServer): Promise<void> {
  const { chainLength } = await store.read.site.findUniqueOrThrow({ where: { id: siteId } })
  const body = await makeStudy(store.read, { siteId, now }, () => {})
  await keepStudy(store, siteId, { madeAt: now, entries: chainLength, body: JSON.stringify(body) })
}
