import { describe, expect, it } from 'vitest'
import { addArea } from '@glandkeeper/contract/areas'
import type { FieldEvent } from '@glandkeeper/contract/events'
import { listLeaks } from '@glandkeeper/contract/leaks'
import { aLeak, aReading, aRepack } from '@glandkeeper/fixtures/a-reading'
import { aStudiedPlant, at } from '../../../testing/a-study.ts'

// Every server of these tests stands at 2026-05-04 09:00 UTC.

describe('repeat leakers', () => {
  it('are those above the limit of the mean course, with the chance of it', async () => {
    const { add, send, study } = await aStudiedPlant()
    const begin = at('2025-05-04')
    const months = ['06', '07', '08', '09', '10', '11', '12']
    const entries: FieldEvent[] = []
    for (let number = 1; number <= 12; number += 1) {
      const valveId = await add(`BH-${number}`)
      const leaks = number === 7 ? months : number < 4 ? months.slice(number, number + 1) : []
      entries.push(
        aReading({ valveId, takenAt: begin }),
        ...leaks.flatMap((month) => [
          aLeak({ valveId, takenAt: at(`2025-${month}-01`) }),
          aReading({ valveId, takenAt: at(`2025-${month}-02`) }),
          aRepack({ valveId, takenAt: at(`2025-${month}-03`) }),
        ]),
      )
    }
    await send(...entries)
    await add('BH-99')
    const { repeatLeakers, aboveInAll, meanCourse } = await study()
    expect(repeatLeakers.map(({ tag, leaks, expected }) => [tag, leaks, expected])).toEqual([
      ['BH-7', 7, Number((10 / 12).toFixed(3))],
    ])
    // 1 - e^-m Σ m^k / k! to k = 6, with m = 10 / 12
    expect(repeatLeakers[0]?.chance).toBeCloseTo(2.7e-5, 6)
    expect([aboveInAll, meanCourse.at(-1)]).toMatchObject([1, { atRisk: 12, mean: 0.8333 }])
  })
})

describe('packing changes', () => {
  it('set what valves leaked with the packing before against what they leaked with the one after', async () => {
    const { add, send, study } = await aStudiedPlant()
    const repacked = async (tag: string, families: readonly string[]) => {
      const valveId = await add(tag)
      const days = ['2025-05-04', '2025-08-04', '2025-11-04', '2026-02-04']
      await send(...families.map((family, place) => aRepack({ valveId, takenAt: at(days[place]!), family })))
      return valveId
    }
    const one = await repacked('BH-1', ['PTFE braid', 'PTFE braid', 'graphite braid'])
    await repacked('BH-2', ['PTFE braid', 'graphite braid'])
    await repacked('BH-3', ['aramid braid', 'graphite braid'])
    await repacked('BH-4', ['graphite braid', 'graphite braid'])
    await send(
      ...['2025-06-01', '2025-09-01', '2026-01-10'].flatMap((day) => [
        aLeak({ valveId: one, takenAt: at(day) }),
        aReading({ valveId: one, takenAt: `${day}T09:00:00Z` }),
      ]),
    )
    const { packingChanges } = await study()
    expect(packingChanges).toMatchObject([
      {
        from: 'PTFE braid',
        to: 'graphite braid',
        valves: ['BH-1', 'BH-2'],
        before: { valves: 2, leaks: 2 },
        after: { valves: 2, leaks: 1 },
      },
    ])
    // 184 and 92 days before; from 4 November and 4 August 2025 until now after.
    expect(packingChanges[0]?.before.months).toBe(Number(((184 + 92) / 30.4375).toFixed(2)))
    expect(packingChanges[0]?.after.months).toBeCloseTo((181 + 273 + 2 / 24) / 30.4375, 2)
    expect((await study('one year')).packingChanges[0]?.before.leaks).toBe(2)
  })
})

describe('after outages', () => {
  const anOutage = (name: string, endedOn: string, areaCodes: string[] = []) => ({ name, endedOn, areaCodes })

  it('leaks of the areas that were down are set against the time that lies there, and lead to the list', async () => {
    const server = await aStudiedPlant()
    const { add, send, study, expectOk, store, siteId } = server
    await expectOk('planner', addArea, { body: { code: 'EF', name: 'Effluent', walkPosition: 20, level: 0 } })
    for (const { name, endedOn, areaCodes } of [anOutage('Spring', '2025-06-02'), anOutage('Boilers', '2025-10-05', ['BH'])])
      await store.write((write) =>
        write.outage.create({
          data: {
            id: crypto.randomUUID(),
            siteId,
            name,
            earliestOn: endedOn,
            likelyOn: endedOn,
            latestOn: endedOn,
            days: 1,
            fittingHours: 1,
            scaffoldingHours: 0,
            isolatingHours: 0,
            areaCodes: JSON.stringify(areaCodes),
            state: 'over',
            startedOn: endedOn,
            endedOn,
            createdAt: server.now,
          },
        }),
      )
    const boiler = await add('BH-1')
    const effluent = await add('EF-1', { areaCode: 'EF' })
    const leak = (valveId: string, day: string) => [
      aLeak({ valveId, takenAt: at(day) }),
      aReading({ valveId, takenAt: `${day}T09:00:00Z` }),
      aRepack({ valveId, takenAt: `${day}T10:00:00Z` }),
    ]
    for (const valveId of [boiler, effluent]) await send(aReading({ valveId, takenAt: '2025-05-04T09:00:00Z' }))
    await send(
      ...leak(boiler, '2025-06-02'),
      ...leak(boiler, '2025-06-03'),
      ...leak(boiler, '2025-10-20'),
      ...leak(effluent, '2025-10-21'),
      ...leak(effluent, '2025-07-02'),
      ...leak(effluent, '2025-07-03'),
    )
    const { afterOutages } = await study()
    // Three windows of thirty days, in twice 365 days.
    expect(afterOutages).toMatchObject({ leaks: 6, within: 3, share: 0.5, timeShare: Number((90 / 730).toFixed(5)) })
    expect(afterOutages.lower).toBeCloseTo(0.11812, 5)
    expect(afterOutages.outages.map(({ name, leaks }) => [name, leaks])).toEqual([
      ['Boilers', 1],
      ['Spring', 2],
    ])
    for (const { outageId, leaks } of afterOutages.outages)
      expect((await expectOk('engineer', listLeaks, { query: { afterOutage: outageId } })).total).toBe(leaks)
  })

  it('without an outage there is no share to tell', async () => {
    const { add, send, study } = await aStudiedPlant()
    const valveId = await add('BH-1')
    await send(aReading({ valveId, takenAt: at('2026-01-01') }), aLeak({ valveId, takenAt: at('2026-02-01') }))
    expect((await study()).afterOutages).toEqual({
      leaks: 1,
      within: 0,
      share: null,
      lower: null,
      upper: null,
      timeShare: null,
      outages: [],
    })
  })
})
