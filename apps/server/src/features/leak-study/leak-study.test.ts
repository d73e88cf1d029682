import { describe, expect, it } from 'vitest'
import { retireValve } from '@glandkeeper/contract/valves'
import { listLeaks, showLeakHistory } from '@glandkeeper/contract/leaks'
import { aCorrection, aLeak, aNip, aReading, aRepack } from '@glandkeeper/fixtures/a-reading'
import { aServerWithPlant } from '../../../testing/a-plant.ts'
import { aStudiedPlant, at, studied } from '../../../testing/a-study.ts'

// Every server of these tests stands at 2026-05-04 09:00 UTC.

describe('rates of a study', () => {
  it('are leaks against the time watched: 1 leak in 2,000 months is 0.5 in 1,000', async () => {
    const { add, send, study } = await aStudiedPlant()
    const valveId = await add('BH-1')
    // Five valves watched for 400 months each.
    const long = new Date(Date.parse('2026-05-04T09:00:00Z') - 400 * 30.4375 * 86_400_000).toISOString()
    await send(
      aReading({ valveId, takenAt: long }),
      aLeak({ valveId, takenAt: at('2025-11-03') }),
      aReading({ valveId, takenAt: at('2025-11-04') }),
    )
    for (let number = 2; number <= 5; number += 1) await send(aReading({ valveId: await add(`BH-${number}`), takenAt: long }))
    const { overall, valves } = await study()
    expect([valves, overall]).toEqual([
      5,
      // Garwood: 0.0253 to 5.572 events, over 2 thousand months.
      { name: 'all', valves: 5, months: 2000, leaks: 1, rate: 0.5, lower: 0.013, upper: 2.786, nipsPerDryMonth: 0 },
    ])
  })

  it('count over two years and one year back, from the first moment of the day at the site', async () => {
    const { add, send, study } = await aStudiedPlant()
    const valveId = await add('BH-1')
    const leak = (takenAt: string) => [
      aLeak({ valveId, takenAt }),
      aReading({ valveId, takenAt: takenAt.replace(':00:00Z', ':30:00Z') }),
      aRepack({ valveId, takenAt: takenAt.replace(':00:00Z', ':40:00Z') }),
    ]
    // Midnight in London is 23:00 by UTC in May: the second leak is of the year, the first one a moment before it.
    await send(
      aReading({ valveId, takenAt: at('2022-05-04') }),
      ...leak('2023-06-01T08:00:00Z'),
      ...leak('2025-05-03T22:00:00Z'),
      ...leak('2025-05-03T23:00:00Z'),
    )
    expect([
      (await study()).overall.leaks,
      (await study('two years')).overall.leaks,
      (await study('one year')).overall.leaks,
    ]).toEqual([3, 2, 1])
    const { overall } = await study('one year')
    // 365 days and the ten hours from one in the night, by the clock of London, until ten in the morning.
    expect(overall.months).toBe(Number(((365 + 10 / 24) / 30.4375).toFixed(2)))
  })

  it('of a retired valve end with it, and a leak after that counts still', async () => {
    const server = await aStudiedPlant()
    const { add, send, study, expectOk, store } = server
    const valveId = await add('BH-1')
    await send(aReading({ valveId, takenAt: at('2026-01-01') }))
    await expectOk('planner', retireValve, { params: { tag: 'BH-1' }, body: { revision: 1, reason: 'line removed' } })
    await store.write((write) => write.valve.update({ where: { id: valveId }, data: { retiredAt: new Date(at('2026-01-31')) } }))
    expect((await study()).overall).toMatchObject({ valves: 1, months: Number((30 / 30.4375).toFixed(2)), leaks: 0 })
    await send(aLeak({ valveId, takenAt: at('2026-02-10') }))
    expect((await study()).overall).toMatchObject({ months: Number((40 / 30.4375).toFixed(2)), leaks: 1 })
  })

  it('count what only a meter showed by the value that is a leak at that valve, as the list does', async () => {
    const { add, send, study, store, siteId, personIds, now, expectOk } = await aStudiedPlant()
    const valveId = await add('BH-1')
    const set = {
      siteId,
      kind: 'ordinary',
      note: '',
      since: '2026-01-01',
      judgedFrom: 500,
      personId: personIds.engineer,
      at: now,
    }
    await store.write((write) => write.valveMonitoring.create({ data: { ...set, valveId } }))
    await send(
      aReading({ valveId, takenAt: at('2026-01-01') }),
      aLeak({ valveId, takenAt: at('2026-02-01'), leak: 'dry', screeningValue: 510 }),
    )
    const { total } = await expectOk('engineer', listLeaks, { query: {} })
    expect([total, (await study()).overall.leaks]).toEqual([1, 1])
  })

  it('follow what was corrected, and of a valve nobody wrote about there is none', async () => {
    const { add, send, study } = await aStudiedPlant()
    const valveId = await add('BH-1')
    await add('BH-2', { service: 'feed water' })
    const leak = aLeak({ valveId, takenAt: at('2026-02-01') })
    await send(
      aReading({ valveId, takenAt: at('2026-01-01') }),
      leak,
      aCorrection({ valveId, takenAt: at('2026-02-02'), corrects: leak.id }),
    )
    const { overall, byService, valves } = await study()
    expect([overall.leaks, valves, byService.map(({ name }) => name)]).toEqual([0, 2, ['saturated steam']])
  })

  it('tell packings apart by the time each was in the box, ages by its growing older, and nips by the time it was dry', async () => {
    const { add, send, study } = await aStudiedPlant()
    const valveId = await add('BH-1')
    await send(
      aReading({ valveId, takenAt: '2025-05-04T09:00:00Z' }),
      aRepack({ valveId, takenAt: '2025-07-03T09:00:00Z', family: 'PTFE braid' }),
      // In the first month; dry after ten days.
      aLeak({ valveId, takenAt: '2025-07-13T09:00:00Z' }),
      aReading({ valveId, takenAt: '2025-07-23T09:00:00Z' }),
      aNip({ valveId, takenAt: '2025-08-23T09:00:00Z', leakBefore: 'dry' }),
      aNip({ valveId, takenAt: '2025-08-24T09:00:00Z', leakBefore: 'dry' }),
    )
    const { byFamily, byAge } = await study()
    const months = (days: number) => Number((days / 30.4375).toFixed(2))
    expect(byFamily.map(({ name, months: watched, leaks, nipsPerDryMonth }) => [name, watched, leaks, nipsPerDryMonth])).toEqual([
      ['PTFE braid', months(305), 1, Number(((2 * 30.4375) / 295).toFixed(3))],
      ['not known', months(60), 0, 0],
    ])
    expect(byAge.map(({ name, months: watched, leaks, nipsPerDryMonth }) => [name, watched, leaks, nipsPerDryMonth])).toEqual([
      ['first month', 1, 1, 0],
      ['1 to 6 months', 5, 0, 0.4],
      ['6 to 12 months', Number((305 / 30.4375 - 6).toFixed(2)), 0, 0],
      ['not known', months(60), 0, 0],
    ])
  })
})

describe('a study of some valves of the demo plant', () => {
  it('leads with every number of leaks to a list of as many', async () => {
    const server = await aServerWithPlant(25)
    const study = await studied(server)
    const listed = async (query: object) =>
      (await server.expectOk('engineer', listLeaks, { query: { ...query, limit: '1' } })).total
    const rows = [
      ...study.byService.map((row) => [{ service: row.name }, row] as const),
      ...study.byFamily.map((row) => [{ family: row.name }, row] as const),
      ...study.byArea.map((row) => [{ area: row.name }, row] as const),
      ...study.byAge.map((row) => [{ age: row.name }, row] as const),
      [{}, study.overall] as const,
      ...study.repeatLeakers.map((row) => [{ tag: row.tag }, row] as const),
    ]
    expect(study.overall.leaks).toBeGreaterThan(50)
    expect(study.byFamily.map(({ name }) => name)).toContain('not known')
    for (const [query, { leaks }] of rows) expect([query, await listed(query)]).toEqual([query, leaks])
  }, 60_000)

  it('has in each of its tables all the time and every leak of the histories of the valves', async () => {
    const server = await aServerWithPlant(25)
    const { overall, byService, byFamily, byArea, byAge } = await studied(server)
    const valves = await server.store.read.valve.findMany({ select: { tag: true } })
    const histories = await Promise.all(
      valves.map(({ tag }) => server.expectOk('engineer', showLeakHistory, { params: { tag } })),
    )
    const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)
    const months = sum(histories.map(({ daysWatched }) => daysWatched)) / 30.4375
    const dry = sum(histories.map(({ daysWatched, daysLeaking }) => daysWatched - daysLeaking)) / 30.4375
    const leaks = sum(histories.map((history) => history.leaks.length))
    expect(overall.nipsPerDryMonth).toBeCloseTo(sum(histories.map(({ nips }) => nips)) / dry, 3)
    for (const table of [[overall], byService, byFamily, byArea, byAge]) {
      expect(sum(table.map((row) => row.leaks))).toBe(leaks)
      expect(sum(table.map((row) => row.months))).toBeCloseTo(months, 0)
    }
  }, 60_000)
})
