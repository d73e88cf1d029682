import { showBoardSummary } from '@glandkeeper/contract/board'
import { sendEvents } from '@glandkeeper/contract/events'
import { confirmSetting } from '@glandkeeper/contract/settings'
import { changeSite } from '@glandkeeper/contract/sites'
import { addValve, showValve } from '@glandkeeper/contract/valves'
import { aReading, aRepack } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'

const at = (day: string) => `${day}T08:00:00Z`

/** Repacked a year before today (4 May 2026), and down from 12 to 5.1 mm since: about 7 mm a year, 2.1 mm left. */
async function aWearingValve(): Promise<TestServer> {
  const server = await aServer()
  const { valveId } = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-1' }) })
  const events = [
    aRepack({ valveId, takenAt: at('2025-05-04'), gapLeft: 12, gapRight: 12 }),
    ...[
      ['2025-08-04', 10],
      ['2025-11-04', 8.3],
      ['2026-02-04', 6.7],
      ['2026-05-03', 5.1],
    ].map(([day, gap]) => aReading({ valveId, takenAt: at(String(day)), gapLeft: Number(gap), gapRight: Number(gap) })),
  ]
  await server.expectOk('fitter', sendEvents, { body: { events } })
  return server
}
const shown = async (server: TestServer) => (await server.expectOk('fitter', showValve, { params: { tag: 'BH-1' } })).state

describe('the state of a gland', () => {
  it('says days with their chance, in the sentence too, and what the date leans on', async () => {
    const server = await aWearingValve()
    const { forecast, why, runsOutOn } = await shown(server)
    expect(forecast).toMatchObject({ readingsUsed: 5, origin: 'set by us', stopOn: '2026-11-02' })
    const { earliest, early, middle, late, latest } = forecast!
    const days = [earliest, early, middle, late, latest].map((day) => day ?? 'beyond')
    expect(days).toEqual(days.toSorted())
    expect(forecast!.early! > '2026-05-04' && forecast!.early! < '2026-12-31').toBe(true)
    expect(runsOutOn).toBe(forecast?.middle)
    expect(forecast!.chanceBeforeStop).toBeGreaterThan(0.3)
    expect(forecast!.says).toContain('nothing was learned from this plant yet: the date leans on values set by us')
    expect(why).toMatch(/2\.1\u00a0mm left, four times in five used up between .* and .*; \d+\u00a0% before 2 Nov 2026/)
  })

  it('counts to the planned stop once there is one', async () => {
    const server = await aWearingValve()
    const before = (await shown(server)).forecast!.chanceBeforeStop
    await server.expectOk('planner', changeSite, {
      body: { name: 'Test mill', timeZone: 'Europe/London', nextStopOn: '2026-06-01' },
    })
    await expect.poll(async () => (await shown(server)).forecast?.stopOn).toBe('2026-06-01')
    expect((await shown(server)).forecast!.chanceBeforeStop).toBeLessThan(before)
    expect((await server.expectOk('fitter', showBoardSummary)).stopOn).toBe('2026-06-01')
    await expect
      .poll(async () => (await server.store.read.valveState.findFirst())?.stopAt)
      .toEqual(new Date('2026-05-31T23:00:00Z'))
  })

  it('stands by the site’s own bands', async () => {
    const server = await aWearingValve()
    expect((await shown(server)).standing).toBe('book')
    for (const [key, seen, value] of [
      ['bookChance', 0.3, 0.9],
      ['watchChance', 0.05, 0.8],
      ['watchReserve', 4, 1],
      ['bookReserve', 2, 1],
    ] as const) {
      await server.expectOk('engineer', confirmSetting, { params: { key }, body: { seen, value } })
    }
    expect((await shown(server)).standing).not.toBe('book')
  })

  it('says when to look next and which rule decided; the rule follows a changed setting', async () => {
    const server = await aWearingValve()
    const { nextLook } = await shown(server)
    expect(nextLook?.weighed.map(({ rule }) => rule)).toContain('longest time between looks')
    expect(nextLook?.on).toBe(nextLook?.weighed[0]?.on)
    await server.expectOk('engineer', confirmSetting, { params: { key: 'mostBetweenOrdinary' }, body: { seen: 91, value: 2 } })
    await expect
      .poll(async () => (await server.store.read.valveState.findFirst())?.nextLookAt)
      .toEqual(new Date(Date.parse(at('2026-05-03')) + 2 * 86_400_000))
    expect((await shown(server)).nextLook).toMatchObject({ on: '2026-05-05', rule: 'longest time between looks' })
  })
})
