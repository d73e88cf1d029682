import { describe, expect, it } from 'vitest'
import { sendEvents } from '@glandkeeper/contract/events'
import { listLeaks, showLeakHistory, showLeaksByMonth } from '@glandkeeper/contract/leaks'
import { addOutage, endOutage } from '@glandkeeper/contract/outages'
import { addValve, changeValve } from '@glandkeeper/contract/valves'
import { aCorrection, aDeferral, aLeak, aNip, aReading, aRepack, aTreatment } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import type { FieldEvent } from '@glandkeeper/contract/events'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { statesThatDiffer } from '../glands/index.ts'
import { LeakKeeping } from './leak-keeping.ts'

const at = (day: string) => `${day}T08:00:00Z`

async function aLeakingPlant() {
  const server = await aServer()
  const add = async (tag: string, more: object = {}) =>
    (await server.expectOk('planner', addValve, { body: { ...aValve({ areaCode: 'BH', tag }), ...more } })).valveId
  const send = (...events: FieldEvent[]) => server.expectOk('fitter', sendEvents, { body: { events } })
  const leaks = async (query: object = {}) => server.expectOk('engineer', listLeaks, { query })
  return { ...server, add, send, leaks }
}

async function statesDiffering(server: TestServer): Promise<string[]> {
  const tags = []
  for await (const { tag, fields } of statesThatDiffer(server.store.read, server.siteId, server.now))
    tags.push(`${tag} ${fields.join(' ')}`)
  return tags
}

it('a leak is open when it is seen, attempted after a nip nobody looked after, verified once seen dry', async () => {
  const { add, send, leaks } = await aLeakingPlant()
  const valveId = await add('BH-1')
  const state = async () => (await leaks()).rows.map((row) => [row.state, row.worst, row.attempts])
  await send(aLeak({ valveId, takenAt: at('2026-03-02'), leak: 'drip' }))
  expect(await state()).toEqual([['open', 'drip', 0]])
  await send(aNip({ valveId, takenAt: at('2026-03-03'), leakBefore: 'run', leakAfter: undefined }))
  expect(await state()).toEqual([['attempted', 'run', 1]])
  await send(aReading({ valveId, takenAt: at('2026-03-04'), leak: 'dry' }))
  expect(await state()).toEqual([['verified', 'run', 1]])
})

it('seen again within thirty days it came back; later it is another leak', async () => {
  const { add, send, leaks } = await aLeakingPlant()
  const valveId = await add('BH-1')
  const first = aNip({ valveId, takenAt: at('2026-01-10') })
  await send(first, aLeak({ valveId, takenAt: at('2026-02-08') }), aReading({ valveId, takenAt: at('2026-02-10') }))
  expect((await leaks()).rows).toMatchObject([{ leakId: first.id, reopened: 1, state: 'verified' }])
  await send(aLeak({ valveId, takenAt: at('2026-04-01') }))
  expect((await leaks()).rows.map(({ state }) => state)).toEqual(['open', 'verified'])
})

it('kept leaks are those the entries make, whatever order they arrive in and whatever is corrected', async () => {
  const server = await aLeakingPlant()
  const { add, send, leaks } = server
  const valveId = await add('BH-1')
  const late = aLeak({ valveId, takenAt: at('2026-03-20'), leak: 'drip' })
  const early = aLeak({ valveId, takenAt: at('2026-03-01'), leak: 'weep' })
  await send(late)
  await send(early)
  expect((await leaks()).rows).toMatchObject([{ leakId: early.id, worst: 'drip' }])
  await send(aCorrection({ valveId, takenAt: at('2026-03-21'), corrects: early.id, replacement: null, reason: 'wrong valve' }))
  expect((await leaks()).rows).toMatchObject([{ leakId: late.id }])
  expect(await statesDiffering(server)).toEqual([])
  await server.store.write((write) => write.leak.updateMany({ where: { valveId }, data: { attempts: 9 } }))
  expect(await statesDiffering(server)).toEqual(['BH-1 leaks'])
})

describe('the list', () => {
  it('is told apart by state, service, packing, age, month and valve, and counts valves beside leaks', async () => {
    const { add, send, leaks } = await aLeakingPlant()
    const [one, other] = [await add('BH-1'), await add('BH-2', { service: 'feed water' })]
    await send(
      aRepack({ valveId: one, takenAt: at('2026-01-05'), family: 'PTFE braid' }),
      aLeak({ valveId: one, takenAt: at('2026-01-20') }),
      aReading({ valveId: one, takenAt: at('2026-01-21') }),
      aLeak({ valveId: one, takenAt: at('2026-04-20'), leak: 'run' }),
      aLeak({ valveId: other, takenAt: at('2026-04-21') }),
    )
    const found = async (query: object) => (await leaks(query)).rows.map(({ tag, openedAt }) => `${tag} ${openedAt.slice(5, 10)}`)
    expect(await found({ state: 'not verified' })).toEqual(['BH-2 04-21', 'BH-1 04-20'])
    expect(await found({ state: 'verified' })).toEqual(['BH-1 01-20'])
    expect(await found({ service: 'feed water' })).toEqual(['BH-2 04-21'])
    expect(await found({ family: 'PTFE braid', order: 'oldest first' })).toEqual(['BH-1 01-20', 'BH-1 04-20'])
    expect(await found({ family: 'not known' })).toEqual(['BH-2 04-21'])
    expect(await found({ age: 'first month' })).toEqual(['BH-1 01-20'])
    expect(await found({ age: '1 to 6 months' })).toEqual(['BH-1 04-20'])
    expect(await found({ age: 'not known' })).toEqual(['BH-2 04-21'])
    expect(await found({ month: '2026-04', order: 'worst first' })).toEqual(['BH-1 04-20', 'BH-2 04-21'])
    expect(await found({ tag: 'BH-2' })).toEqual(['BH-2 04-21'])
    expect(await found({ area: 'BH', tag: 'BH-1', month: '2026-01' })).toEqual(['BH-1 01-20'])
    expect(await leaks({ limit: '1', offset: '1' })).toMatchObject({ total: 3, valves: 2, rows: [{ tag: 'BH-1' }] })
  })

  it('names those within thirty days after an outage', async () => {
    const { add, send, leaks, expectOk } = await aLeakingPlant()
    const valveId = await add('BH-1')
    const hours = { fitting: 10, scaffolding: 0, isolating: 0 }
    const days = { earliestOn: '2026-02-01', likelyOn: '2026-02-01', latestOn: '2026-02-01', days: 3 }
    const outage = await expectOk('planner', addOutage, { body: { name: 'Spring', ...days, hours, areaCodes: [] } })
    const query = { afterOutage: outage.outageId }
    await send(aLeak({ valveId, takenAt: at('2026-02-20') }))
    expect((await leaks(query)).total).toBe(0)
    await expectOk('planner', endOutage, {
      params: { outageId: outage.outageId },
      body: { revision: 1, startedOn: '2026-02-01', endedOn: '2026-02-03' },
    })
    expect((await leaks(query)).total).toBe(1)
  })

  it('counts each month by the calendar of the site', async () => {
    const { add, send, expectOk } = await aLeakingPlant()
    const valveId = await add('BH-1')
    // Half past eleven in the night of 31 March in London is half past ten by UTC.
    await send(aLeak({ valveId, takenAt: '2026-03-31T22:30:00Z' }), aReading({ valveId, takenAt: '2026-03-31T22:40:00Z' }))
    await send(aRepack({ valveId, takenAt: '2026-03-31T22:50:00Z' }), aLeak({ valveId, takenAt: '2026-03-31T23:30:00Z' }))
    const { months, open } = await expectOk('engineer', showLeaksByMonth, { query: {} })
    expect(months.slice(-3)).toEqual([
      { month: '2026-03', leaks: 1 },
      { month: '2026-04', leaks: 1 },
      { month: '2026-05', leaks: 0 },
    ])
    expect([months.length, open]).toEqual([25, 1])
  })

  it('follows a valve that moves to another service', async () => {
    const { add, send, leaks, expectOk } = await aLeakingPlant()
    const valveId = await add('BH-1')
    await send(aLeak({ valveId, takenAt: at('2026-04-20') }))
    const valve = { ...aValve({ areaCode: 'BH', tag: 'BH-1' }), service: 'condensate' }
    await expectOk('planner', changeValve, { params: { tag: 'BH-1' }, body: { revision: 1, valve } })
    expect((await leaks({ service: 'condensate' })).total).toBe(1)
  })
})

describe('the history of a valve', () => {
  it('tells every step of a leak with who made it, and what changed before it', async () => {
    const { add, send, expectOk } = await aLeakingPlant()
    const valveId = await add('BH-1')
    await send(
      aRepack({ valveId, takenAt: at('2025-09-01'), gapLeft: 18, gapRight: 18 }),
      ...['2025-10-01', '2025-11-10', '2025-12-15', '2026-01-05', '2026-01-20'].map((day) =>
        aNip({ valveId, takenAt: at(day), leakBefore: 'dry', leakAfter: undefined, takenBy: 'M. Cole' }),
      ),
      aLeak({ valveId, takenAt: at('2026-03-02'), leak: 'drip' }),
      aDeferral({ valveId, takenAt: at('2026-03-03'), until: '2026-06-01' }),
      aTreatment({ valveId, takenAt: at('2026-03-04'), leakBefore: 'drip', leakAfter: 'dry' }),
    )
    const { leaks, nips, daysLeaking } = await expectOk('engineer', showLeakHistory, { params: { tag: 'BH-1' } })
    expect(leaks[0]?.steps.map(({ what, by }) => `${what}: ${by}`)).toEqual([
      'seen: The fitter',
      'put off: The fitter',
      'attempt: The fitter',
    ])
    expect(leaks[0]?.before).toMatchObject({
      daysBetweenNips: [40, 35, 21, 15],
      nipsCloser: { first: 37.5, last: 18 },
      lastTouchedBy: 'M. Cole',
      family: 'graphite braid',
      earlierLeaks: 0,
    })
    expect(leaks[0]).toMatchObject({ state: 'verified', deferredUntil: '2026-06-01', isDeferred: true })
    expect([nips, daysLeaking]).toEqual([5, 2])
  })

  it('of a valve nobody wrote about is empty, and of none there is a problem', async () => {
    const { add, call, expectOk } = await aLeakingPlant()
    await add('BH-1')
    expect(await expectOk('fitter', showLeakHistory, { params: { tag: 'BH-1' } })).toMatchObject({
      leaks: [],
      watchedSince: null,
      nipsPerDryMonth: null,
    })
    expect(await call('fitter', showLeakHistory, { params: { tag: 'BH-2' } })).toMatchObject({
      problem: { code: 'valve/unknown' },
    })
  })
})

it('a register from before leaks were kept gets them at the next start, retired valves too', async () => {
  const server = await aLeakingPlant()
  const { add, send, leaks, store, siteId } = server
  const valveId = await add('BH-1')
  await send(aLeak({ valveId, takenAt: at('2026-04-20') }))
  await store.write(async (write) => {
    await write.leak.deleteMany({ where: { siteId } })
    await write.valve.update({ where: { id: valveId }, data: { retiredAt: server.now } })
  })
  expect((await leaks()).total).toBe(0)
  const keeping = new LeakKeeping({ store, clock: () => server.now, log: console })
  await keeping.catchUp()
  expect((await leaks()).total).toBe(1)
  await store.write((write) => write.leak.deleteMany({ where: { siteId } }))
  await keeping.catchUp()
  expect((await leaks()).total, 'a site that has them is not gone through again').toBe(0)
})
