import { sendEvents } from '@glandkeeper/contract/events'
import { showStockOutlook } from '@glandkeeper/contract/stores'
import { aRepack } from '@glandkeeper/fixtures/a-reading'
import { describe, expect, it } from 'vitest'
import { aMovement, aReel, anItem, move, pressedRings, received } from '../../../testing/a-reel.ts'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { anOutage, aPlanInUse } from '../../../testing/planned-outage.ts'
import { packed } from '../../../testing/packed-valve.ts'
import { newId } from '../../platform/ids.ts'

/** Metres a repack of each valve here takes, waste included. */
const EACH = 0.99526

/** A plan in use with these valves in a June outage and those in the fortnight of 18 May. */
async function withPlan(server: TestServer, inOutage: string[], inFortnight: string[] = []): Promise<string> {
  const outageId = await anOutage(server)
  const planId = await aPlanInUse(server, `outage:${outageId}`, [...inOutage, ...inFortnight])
  const fortnight = 'fortnight:2026-05-18'
  const slots = [
    { slotId: fortnight, name: 'fortnight of 18 May', likelyOn: '2026-05-18' },
    { slotId: `outage:${outageId}`, name: 'Short stop in June', likelyOn: '2026-06-09' },
  ]
  await server.store.write(async (write) => {
    await write.repackPlan.update({ where: { id: planId }, data: { summary: JSON.stringify({ slots }) } })
    await write.plannedRepack.updateMany({ where: { planId, valve: { tag: { in: inFortnight } } }, data: { slotId: fortnight } })
  })
  return outageId
}

const outlook = (server: TestServer) => server.expectOk('fitter', showStockOutlook)
const balancesOf = async (server: TestServer) =>
  (await outlook(server)).items.map(({ balances }) => balances.map(({ on, balance }) => [on, Number(balance.toFixed(3))]))

describe('the stock over the time of the plan in use', () => {
  it('falls on the likeliest day of each slot by what its valves take', async () => {
    const server = await aServer()
    for (const tag of ['BH-1', 'BH-2', 'BH-3']) await packed(server, tag)
    await packed(server, 'BH-4', 'graphite die-formed')
    await aReel(server, 8)
    const rings = await anItem(server, pressedRings)
    await move(server, received(rings, 20))
    await withPlan(server, ['BH-1', 'BH-2', 'BH-4'], ['BH-3'])
    const { items, unknown, open, until } = await outlook(server)
    expect([unknown, open, until]).toEqual([[], [], '2027-05-03'])
    expect(items.map(({ demand }) => Number(demand.toFixed(3)))).toEqual([Number((3 * EACH).toFixed(3)), 6])
    expect(await balancesOf(server)).toEqual([
      [
        ['2026-05-04', 8],
        ['2026-05-18', 7.005],
        ['2026-06-09', 5.014],
      ],
      [
        ['2026-05-04', 20],
        ['2026-06-09', 14],
      ],
    ])
  })

  it('leaves out valves that were packed since the plan was made, and those that wait', async () => {
    let now = new Date('2026-05-04T09:00:00Z')
    const server = await aServer({ clock: () => now })
    const first = await packed(server, 'BH-1')
    await packed(server, 'BH-2')
    await packed(server, 'BH-3')
    await aReel(server, 8)
    await withPlan(server, ['BH-1', 'BH-2', 'BH-3'])
    await server.store.write((write) =>
      write.plannedRepack.updateMany({ where: { valve: { tag: 'BH-3' } }, data: { slotId: null } }),
    )
    now = new Date('2026-05-06T09:00:00Z')
    const repack = aRepack({ valveId: first, takenAt: '2026-05-05T08:00:00Z' })
    await server.expectOk('fitter', sendEvents, { body: { events: [repack] } })
    expect((await outlook(server)).items.map(({ demand }) => Number(demand.toFixed(3)))).toEqual([Number(EACH.toFixed(3))])
  })

  it('does not want again what was issued for it: for the outage, or for a valve of it', async () => {
    const server = await aServer()
    await packed(server, 'BH-1')
    await packed(server, 'BH-2')
    const { itemId, lotId } = await aReel(server, 8)
    const outageId = await withPlan(server, ['BH-1'], ['BH-2'])
    const issued = { itemId, lotId, tag: null, outageId: null }
    await move(
      server,
      aMovement('issued', { ...issued, amount: 0.4, outageId }),
      aMovement('issued', { ...issued, amount: 0.3, tag: 'BH-1' }),
      aMovement('issued', { ...issued, amount: 1, tag: 'BH-2' }),
    )
    expect(await balancesOf(server)).toEqual([
      [
        ['2026-05-04', 6.3],
        ['2026-06-09', Number((6.3 - (EACH - 0.7)).toFixed(3))],
      ],
    ])
  })

  it('takes a slot whose day is over for today', async () => {
    const server = await aServer({ clock: () => new Date('2026-06-20T09:00:00Z') })
    await packed(server, 'BH-1')
    await aReel(server, 8)
    await withPlan(server, ['BH-1'])
    expect(await balancesOf(server)).toEqual([
      [
        ['2026-06-20', 8],
        ['2026-06-20', 7.005],
      ],
    ])
  })

  it('names what the store has no item for, and valves whose packing cannot be worked out', async () => {
    const server = await aServer()
    await packed(server, 'BH-1', 'PTFE braid')
    await packed(server, 'BH-2', 'PTFE braid')
    await packed(server, 'BH-3', 'graphite braid', { gland: { noseLength: null } })
    await withPlan(server, ['BH-1', 'BH-3'], ['BH-2'])
    expect(await outlook(server)).toMatchObject({
      items: [],
      unknown: [{ needs: 'PTFE braid, 8\u00a0mm', tags: expect.arrayContaining(['BH-1', 'BH-2']) }],
      open: [{ says: 'box depth or nose not measured', tags: ['BH-3'] }],
    })
  })
})

it('without a plan in use nothing is wanted, and a year is looked at', async () => {
  const server = await aServer()
  await packed(server, 'BH-1')
  const { itemId } = await aReel(server, 3)
  await move(server, aMovement('ordered', { itemId, movementId: newId(), amount: 8, expectedOn: '2026-05-20' }))
  const { items, until } = await outlook(server)
  expect(until).toBe('2027-05-04')
  expect(items).toMatchObject([
    {
      itemId,
      demand: 0,
      balances: [{ balance: 3 }, { on: '2026-05-20', balance: 11 }],
      belowLeastOn: '2026-05-04',
      shortOn: null,
    },
  ])
})
