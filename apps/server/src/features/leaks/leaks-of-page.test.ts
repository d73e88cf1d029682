import { expect, it } from 'vitest'
import { listLeaks, showLeaksByMonth } from '@glandkeeper/contract/leaks'
import { addValve } from '@glandkeeper/contract/valves'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { newId } from '../../platform/ids.ts'
import { aServer } from '../../../testing/a-server.ts'
import { valvesOf } from './leaks-of-page.ts'

/** Leaks as rows alone: of three valves, the grades of each from the oldest on; null is one that only a meter showed. */
async function aPlantOfLeaks() {
  const server = await aServer()
  const { store, siteId, expectOk } = server
  const grades = { 'BH-1': [4, 2, null], 'BH-2': [2, 3], 'BH-3': [null, 4] } as const
  for (const [tag, worsts] of Object.entries(grades)) {
    const service = tag === 'BH-3' ? 'condensate' : 'saturated steam'
    const { valveId } = await expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag, service }) })
    const { areaId } = await store.read.valve.findUniqueOrThrow({ where: { id: valveId } })
    await store.write((write) =>
      write.leak.createMany({
        data: worsts.map((worst, place) => ({
          id: newId(),
          siteId,
          valveId,
          areaId,
          service,
          openedAt: new Date(`2026-0${place + 1}-0${tag.slice(-1)}T08:00:00Z`),
          state: place === 0 ? 'verified' : 'open',
          worst,
          attempts: 0,
          reopened: 0,
          family: tag === 'BH-2' ? 'PTFE braid' : null,
          ageDays: tag === 'BH-2' ? 40 : null,
        })),
      }),
    )
  }
  return server
}

it('the worst come first, the newest of a grade before the others, what only a meter showed last, page after page', async () => {
  const { expectOk } = await aPlantOfLeaks()
  const page = async (query: object) =>
    (await expectOk('fitter', listLeaks, { query: { order: 'worst first', ...query } })).rows.map(
      ({ tag, worst, openedAt }) => `${tag} ${openedAt.slice(5, 7)} ${worst ?? '-'}`,
    )
  const all = ['BH-3 02 run', 'BH-1 01 run', 'BH-2 02 drip', 'BH-1 02 weep', 'BH-2 01 weep', 'BH-1 03 -', 'BH-3 01 -']
  expect(await page({})).toEqual(all)
  expect((await expectOk('fitter', listLeaks, { query: { order: 'worst first', limit: '1' } })).total).toBe(all.length)
  for (let offset = 0; offset < all.length; offset += 3)
    expect(await page({ offset: String(offset), limit: '3' })).toEqual(all.slice(offset, offset + 3))
  expect(await page({ state: 'open', limit: '3' })).toEqual(['BH-3 02 run', 'BH-2 02 drip', 'BH-1 02 weep'])
})

it('valves are the same whether they are counted here or by the database, which it does of many leaks', async () => {
  const { store, siteId } = await aPlantOfLeaks()
  const { id: areaId } = (await store.read.area.findFirst({ where: { siteId } }))!
  const filters = [
    [{}, 3],
    [{ service: 'saturated steam' }, 2],
    [{ service: 'condensate', areaId }, 1],
    [{ areaId: 'none' }, 0],
    [{ family: 'PTFE braid' }, 1],
    [{ family: null }, 2],
    [{ ageDays: { gte: 30, lt: 50 } }, 1],
    [{ state: { in: ['open'] }, AND: [{ valve: { tag: 'BH-2' } }] }, 1],
    [{ AND: [{ openedAt: { gte: new Date('2026-03-01') } }] }, 1],
  ] as const
  for (const [filter, valves] of filters)
    for (const total of [1, 1_000_000])
      expect([filter, await valvesOf(store.read, { siteId, ...filter } as Parameters<typeof valvesOf>[1], total)]).toEqual([
        filter,
        valves,
      ])
})

it('by month, those that stand open are of the service and the area asked for', async () => {
  const { expectOk } = await aPlantOfLeaks()
  const open = async (query: object) => {
    const answer = await expectOk('fitter', showLeaksByMonth, { query })
    return [answer.open, answer.attempted, answer.months.slice(-5).map(({ leaks }) => leaks)]
  }
  expect(await open({})).toEqual([4, 0, [3, 3, 1, 0, 0]])
  expect(await open({ service: 'condensate' })).toEqual([1, 0, [1, 1, 0, 0, 0]])
  expect(await open({ area: 'BH', service: 'saturated steam' })).toEqual([3, 0, [2, 2, 1, 0, 0]])
  expect(await open({ area: 'EF' })).toEqual([0, 0, [0, 0, 0, 0, 0]])
})
