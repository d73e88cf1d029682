import { describe, expect, it } from 'vitest'
import type { FieldEvent } from '@glandkeeper/contract/events'
import { comparePackings } from '@glandkeeper/contract/packing-lives'
import { confirmSetting } from '@glandkeeper/contract/settings'
import { aLeak, aReading, aRepack, aRingAdded } from '@glandkeeper/fixtures/a-reading'
import { aServerWithPlant } from '../../../testing/a-plant.ts'
import type { TestServer } from '../../../testing/a-server.ts'
import { aStudiedPlant, at, study } from '../../../testing/a-study.ts'

const compared = (server: TestServer, query: object = {}) => server.expectOk('fitter', comparePackings, { query })
const counts = async (server: TestServer) =>
  (await compared(server)).packings.map(({ family, lives, wornOut, renewedEarly, stillIn }) => [
    family,
    lives,
    wornOut,
    renewedEarly,
    stillIn,
  ])

describe('a packing is worn out', () => {
  it('when it is renewed with no more travel than calls for a watch, as the site sets that', async () => {
    const server = await aStudiedPlant()
    const { add, send, expectOk } = server
    const valveId = await add('BH-1')
    // Gap less 3 mm to keep clear: 4 mm of travel are left.
    await send(
      aReading({ valveId, takenAt: at('2024-12-01') }),
      aRepack({ valveId, takenAt: at('2025-01-01') }),
      aReading({ valveId, takenAt: at('2025-06-01'), gapLeft: 7, gapRight: 8 }),
      aRepack({ valveId, takenAt: at('2025-07-01') }),
      aReading({ valveId, takenAt: at('2025-08-01') }),
    )
    await study(server)
    expect(await counts(server)).toEqual([['graphite braid', 2, 1, 0, 1]])
    await expectOk('engineer', confirmSetting, { params: { key: 'watchReserve' }, body: { seen: 4, value: 3.9 } })
    await study(server)
    expect(await counts(server)).toEqual([['graphite braid', 2, 0, 1, 1]])
  })

  it('when it is renewed while it leaked, not when it was seen dry before, nor by a ring added', async () => {
    const server = await aStudiedPlant()
    const { add, send } = server
    const [leaking, dry, topped] = [await add('BH-1'), await add('BH-2'), await add('BH-3')]
    await send(
      aRepack({ valveId: leaking, takenAt: at('2025-01-01'), family: 'PTFE braid' }),
      aLeak({ valveId: leaking, takenAt: at('2025-06-01') }),
      aRepack({ valveId: leaking, takenAt: at('2025-06-02') }),
      aRepack({ valveId: dry, takenAt: at('2025-01-01'), family: 'aramid braid' }),
      aLeak({ valveId: dry, takenAt: at('2025-06-01') }),
      aReading({ valveId: dry, takenAt: at('2025-06-02') }),
      aRepack({ valveId: dry, takenAt: at('2025-06-03') }),
      aRepack({ valveId: topped, takenAt: at('2025-01-01'), family: 'carbon braid' }),
      aLeak({ valveId: topped, takenAt: at('2025-06-01') }),
      aRingAdded({ valveId: topped, takenAt: at('2025-06-02') }),
    )
    await study(server)
    // One life each: by name.
    expect(await counts(server)).toEqual([
      ['PTFE braid', 1, 1, 0, 0],
      ['aramid braid', 1, 0, 1, 0],
      ['carbon braid', 1, 0, 0, 1],
    ])
  })
})

describe('packings are compared', () => {
  it('in a service and a band of heat, with what is said of them, the valves, and what was left out', async () => {
    const server = await aStudiedPlant()
    const { add, send } = server
    const lived = async (tag: string, family: string, months: number, more: object) => {
      const valveId = await add(tag, more)
      const begins = Date.UTC(2020, 0, 1, 8)
      const ends = new Date(begins + months * 30.4375 * 86_400_000)
      return [
        aRepack({ valveId, takenAt: new Date(begins).toISOString(), family }),
        aLeak({ valveId, takenAt: new Date(ends.getTime() - 3_600_000).toISOString() }),
        aRepack({ valveId, takenAt: ends.toISOString(), family: 'soft cord' }),
        aReading({ valveId, takenAt: at('2025-01-01') }),
      ]
    }
    const entries: FieldEvent[] = []
    for (const [index, months] of [30, 32, 34, 36, 38].entries()) {
      entries.push(...(await lived(`BH-${index}`, 'graphite braid', months, { temperature: 251 })))
      entries.push(...(await lived(`BH-1${index}`, 'PTFE braid', months - 20, { temperature: 250 })))
    }
    const older = await add('BH-99', { service: 'feed water', temperature: 99 })
    await send(
      ...entries,
      aReading({ valveId: older, takenAt: at('2021-01-01') }),
      aRepack({ valveId: older, takenAt: at('2022-01-01'), family: 'soft cord' }),
      aReading({ valveId: older, takenAt: at('2025-01-01') }),
    )
    await study(server)

    const all = await compared(server)
    expect(all).toMatchObject({ madeAt: server.now.toISOString(), services: ['feed water', 'saturated steam'], leftOut: 1 })
    expect(all.sentence).toBe(
      'In all services PTFE braid lasts a median of 14 months (10 or more), graphite braid 34 (30 or more); too few have ended to compare: soft cord 0 of 11; the difference is unlikely to be chance (p = 0.002).',
    )
    expect(all.logRank?.degreesOfFreedom).toBe(1)
    const graphite = all.packings.find(({ family }) => family === 'graphite braid')
    expect(graphite).toMatchObject({ lives: 5, wornOut: 5, median: 34, isTooFew: false, weibullMissing: null })
    expect(graphite?.weibull?.shape.lower).toBeGreaterThan(1)
    expect(graphite?.valves).toEqual(['BH-0', 'BH-1', 'BH-2', 'BH-3', 'BH-4'])
    expect(graphite?.steps.map(({ survival }) => survival)).toEqual([0.8, 0.6, 0.4, 0.2, 0])

    const hot = await compared(server, { service: 'saturated steam', heat: 'above 250 °C' })
    expect(hot.packings.map(({ family }) => family)).toEqual(['graphite braid', 'soft cord'])
    expect(hot.sentence).toContain('In saturated steam above 250 °C graphite braid lasts a median of 34 months')
    expect((await compared(server, { heat: '100 to 250 °C' })).packings.map(({ family }) => family)).toEqual([
      'PTFE braid',
      'soft cord',
    ])
    expect((await compared(server, { heat: 'below 100 °C' })).packings.map(({ lives }) => lives)).toEqual([1])
    expect(await compared(server, { service: 'feed water', heat: 'above 250 °C' })).toMatchObject({
      packings: [],
      sentence: 'In feed water above 250 °C no packing is known.',
    })
  })

  it('from the study, and before the first there is nothing to say', async () => {
    const server = await aStudiedPlant()
    expect(await compared(server)).toEqual({
      madeAt: null,
      services: [],
      packings: [],
      leftOut: 0,
      notSeenSince: 0,
      logRank: null,
      sentence: 'The entries have not been gone through yet.',
    })
  })

  it('for the demo plant as the contract has it, in every service and heat, the lives of each summing up', async () => {
    const server = await aServerWithPlant(62)
    await study(server)
    const { services } = await compared(server)
    for (const service of [undefined, ...services])
      for (const heat of ['any', 'below 100 °C', '100 to 250 °C', 'above 250 °C']) {
        const { packings } = await compared(server, { ...(service && { service }), heat })
        for (const { lives, wornOut, renewedEarly, stillIn, steps } of packings)
          expect([wornOut + renewedEarly + stillIn, steps.length <= 60]).toEqual([lives, true])
      }
    const { packings } = await compared(server)
    expect(packings.reduce((sum, { stillIn }) => sum + stillIn, 0)).toBeGreaterThan(20)
  }, 60_000)
})
