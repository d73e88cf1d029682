import { setTimeout as pause } from 'node:timers/promises'
import { expect, it } from 'vitest'
import { cancelLeakStudy, makeLeakStudy, showLeakStudy } from '@glandkeeper/contract/leak-study'
import { aLeak, aReading } from '@glandkeeper/fixtures/a-reading'
import { aStudiedPlant, at, study } from '../../../testing/a-study.ts'
import type { TestServer } from '../../../testing/a-server.ts'
import { LeakStudies } from './leak-studies.ts'

const shown = ({ expectOk }: TestServer) => expectOk('fitter', showLeakStudy, { query: {} })
const kept = ({ store }: TestServer) => store.read.leakStudy.findMany({ select: { entries: true, madeAt: true } })

async function whenDone(server: TestServer) {
  for (;;) {
    const answer = await shown(server)
    if (answer.share === null) return answer
    await pause(20)
  }
}

async function aPlantWithALeak(clock?: () => Date) {
  const server = await aStudiedPlant(clock && { clock })
  const valveId = await server.add('BH-1')
  await server.send(aReading({ valveId, takenAt: at('2026-01-01') }), aLeak({ valveId, takenAt: at('2026-02-01') }))
  return { ...server, valveId }
}

it('a study that is asked for is made in a thread, in the place of the one before, and says what came since', async () => {
  const server = await aPlantWithALeak()
  const { call, send, valveId } = server
  await study(server)
  await send(aReading({ valveId, takenAt: at('2026-02-02') }), aLeak({ valveId, takenAt: at('2026-03-20') }))
  expect((await shown(server)).study).toMatchObject({ entries: 2, entriesSince: 2, overall: { leaks: 1 } })
  expect(await call('fitter', makeLeakStudy)).toMatchObject({ ok: true, status: 202 })
  const { study: made, fault } = await whenDone(server)
  expect([fault, made]).toMatchObject([
    null,
    { entries: 4, entriesSince: 0, overall: { leaks: 2 }, madeAt: server.now.toISOString() },
  ])
  expect(await kept(server)).toHaveLength(1)
})

it('a page that finds none has the first of a small site made by itself, but not of one without entries', async () => {
  const server = await aStudiedPlant()
  expect(await shown(server)).toEqual({ study: null, share: null, fault: null })
  const valveId = await server.add('BH-1')
  await server.send(aLeak({ valveId, takenAt: at('2026-02-01') }))
  expect(await shown(server)).toEqual({ study: null, share: 0, fault: null })
  expect((await whenDone(server)).study?.overall.leaks).toBe(1)
})

it('cancelled it leaves the one before, and with nothing running there is nothing to cancel', async () => {
  const server = await aPlantWithALeak()
  const { expectOk } = server
  await study(server)
  const before = await kept(server)
  await expectOk('engineer', makeLeakStudy)
  expect(await expectOk('planner', cancelLeakStudy)).toEqual({ cancelled: true })
  expect([await kept(server), (await shown(server)).share]).toEqual([before, null])
  expect(await expectOk('planner', cancelLeakStudy)).toEqual({ cancelled: false })
})

it('a body that cannot be made is told as a fault, and no page begins it again', async () => {
  const server = await aPlantWithALeak()
  const { store, databaseUrl, siteId } = server
  const told: unknown[] = []
  const log = { error: (...what: unknown[]) => told.push(what) }
  const studies = new LeakStudies({ store, databaseUrl: `${databaseUrl}-none`, clock: () => server.now, log })
  await studies.start(siteId)
  expect(studies.progressOf(siteId)).toEqual({ share: null, fault: 'The study met an unexpected fault; the one before stays.' })
  await studies.startFirst(siteId)
  expect([studies.progressOf(siteId).share, told.length]).toEqual([null, 1])
  await studies.close()
})

it('one is made at the start where there is none or entries came since, and each night after two, once', async () => {
  let now = new Date('2026-05-04T09:00:00Z')
  const server = await aPlantWithALeak(() => now)
  const { store, databaseUrl, send, valveId } = server
  const studies = new LeakStudies({ store, databaseUrl, clock: () => now, log: console })
  const entries = async () => (await kept(server)).map((row) => `${row.entries} ${row.madeAt.toISOString()}`)
  await studies.catchUp()
  const first = `2 ${now.toISOString()}`
  expect(await entries()).toEqual([first])
  now = new Date('2026-05-05T00:59:00Z')
  await send(aReading({ valveId, takenAt: at('2026-02-02') }))
  await studies.studiesOfTheNight()
  expect(await entries(), 'one minute before two in London').toEqual([first])
  now = new Date('2026-05-05T01:00:00Z')
  await studies.studiesOfTheNight()
  expect(await entries()).toEqual([`3 ${now.toISOString()}`])
  const second = await entries()
  now = new Date('2026-05-06T03:00:00Z')
  await studies.studiesOfTheNight()
  await studies.catchUp()
  expect(await entries(), 'nothing came since').toEqual(second)
  await studies.close()
}, 30_000)
