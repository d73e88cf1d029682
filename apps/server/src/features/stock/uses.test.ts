import { type FieldEvent, sendEvents } from '@glandkeeper/contract/events'
import { listStockMovements, moveStock } from '@glandkeeper/contract/stores'
import { addValve } from '@glandkeeper/contract/valves'
import { aCorrection, aReading, aRepack, aRingAdded } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { aMovement, aReel, anItem, move, received, stockItem } from '../../../testing/a-reel.ts'
import { aServer } from '../../../testing/a-server.ts'
import { newId } from '../../platform/ids.ts'
import { appendEvents } from '../events/index.ts'

const at = (day: number) => `2026-05-${String(day).padStart(2, '0')}T08:00:00Z`

/** A valve BH-1 and an item with one reel of so many metres, received on the first of May. */
async function withReel(metres = 8) {
  const server = await aServer({ clock: () => new Date('2026-05-20T09:00:00Z') })
  const { valveId } = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-1' }) })
  const { itemId, lotId } = await aReel(server, metres)
  const send = async (...events: readonly FieldEvent[]) =>
    (await server.expectOk('fitter', sendEvents, { body: { events: [...events] } })).outcomes
  const ofStore = async (...events: readonly FieldEvent[]) =>
    (await send(...events)).map((outcome) =>
      outcome.outcome === 'accepted' ? outcome.findings.filter(({ code }) => code.startsWith('stock/')) : outcome.outcome,
    )
  const left = async () => (await stockItem(server, itemId)).onHand
  const took = (amount: number, lot = lotId) => ({ fromStore: [{ lotId: lot, amount: amount as never }] })
  const repack = (day: number, amount: number) => aRepack({ valveId, takenAt: at(day), ...took(amount) })
  return { ...server, server, valveId, itemId, lotId, send, ofStore, left, took, repack }
}

type WithReel = Awaited<ReturnType<typeof withReel>>

/** A correction of an entry, taken on a day, with a top-up ring in its place or nothing. */
function corrected({ valveId, took }: WithReel, corrects: string, day: number, amount: number | null): FieldEvent {
  const ring = { kind: 'ring.added' as const, takenAt: at(2), rings: 1 }
  const replacement = amount === null ? null : { ...ring, ...took(amount) }
  return aCorrection({ valveId, takenAt: at(day), corrects, replacement, count: day })
}

describe('an entry that took something from the store', () => {
  it('has it booked with itself: a repack 0.83 m, a ring on top 0.12 m, of 8 m 7.05 m are left', async () => {
    const { server, valveId, itemId, ofStore, left, took, repack } = await withReel()
    expect(await ofStore(repack(2, 0.83), aRingAdded({ valveId, takenAt: at(3), ...took(0.12) }))).toEqual([[], []])
    expect(await left()).toBe(7.05)
    const { movements } = await server.expectOk('planner', listStockMovements, { params: { itemId } })
    expect(movements.slice(0, 2).map(({ kind, change, says, takenAt, by }) => [kind, change, says, takenAt, by])).toEqual([
      ['used', -0.12, 'Used 0.12\u00a0m at BH-1.', '2026-05-03T08:00:00.000Z', 'The fitter'],
      ['used', -0.83, 'Used 0.83\u00a0m at BH-1.', '2026-05-02T08:00:00.000Z', 'The fitter'],
    ])
  })

  it('sent twice has it booked once; two lines of one reel are two', async () => {
    const { valveId, lotId, send, left } = await withReel()
    const line = { lotId, amount: 0.5 as never }
    const repack = aRepack({ valveId, takenAt: at(2), fromStore: [line, line] })
    await send(repack)
    expect(await send(repack)).toMatchObject([{ outcome: 'already' }])
    expect(await left()).toBe(7)
  })

  it('of a reel the store does not know is kept, flagged and booked nowhere', async () => {
    const { store, ofStore, left, valveId, lotId } = await withReel()
    const fromStore = [
      { lotId: newId(), amount: 1 as never },
      { lotId, amount: 2 as never },
    ]
    const flagged = [{ code: 'stock/lot-unknown', detail: "the reel is not in the store's books" }]
    expect(await ofStore(aRepack({ valveId, takenAt: at(2), fromStore }))).toEqual([flagged])
    expect(await left()).toBe(6)
    expect(await store.read.event.count()).toBe(1)
  })

  it('of a reel of another site too', async () => {
    const { store, now, ofStore, repack } = await withReel()
    await store.write(async (write) => {
      await write.site.create({ data: { id: 'other', name: 'Other', timeZone: 'Europe/London', createdAt: now } })
      await write.stockLot.updateMany({ data: { siteId: 'other' } })
    })
    expect(await ofStore(repack(2, 1))).toMatchObject([[{ code: 'stock/lot-unknown' }]])
    expect(await store.read.stockMovement.count({ where: { kind: 'used' } })).toBe(0)
  })

  it('below nought is flagged with what the books had left, until somebody counts', async () => {
    const reel = await withReel(2)
    const { server, ofStore, left, itemId, lotId, repack } = reel
    expect(await ofStore(repack(2, 0.8))).toEqual([[]])
    const flagged = { code: 'stock/below-nought', detail: "the store's books say only 1.2\u00a0m were left: count it" }
    expect(await ofStore(repack(3, 1.5))).toEqual([[flagged]])
    expect(await left()).toBe(-0.3)
    expect(await ofStore(repack(4, 0.1))).toMatchObject([[{ detail: "the store's books say only 0\u00a0m were left: count it" }]])
    await move(server, aMovement('counted', { itemId, lotId, amount: 0.9, takenAt: at(10) }))
    // Done before the count and told after it: what was counted is there all the same.
    expect(await ofStore(repack(5, 3))).toEqual([[]])
    expect(await left()).toBe(0.9)
  })
})

describe('a correction of such an entry', () => {
  it('takes back what it used and books what stands in its place', async () => {
    const reel = await withReel()
    const { send, ofStore, left, repack } = reel
    const wrong = repack(2, 3)
    await send(wrong)
    expect(await ofStore(corrected(reel, wrong.id, 4, 0.3))).toEqual([[]])
    expect(await left()).toBe(7.7)
    await send(corrected(reel, wrong.id, 5, null))
    expect(await left()).toBe(8)
  })

  it('leaves the same stock in whatever order entry and corrections arrive', async () => {
    for (const order of [
      [0, 1, 2],
      [2, 0, 1],
      [1, 2, 0],
      [2, 1, 0],
    ]) {
      const reel = await withReel()
      const entry = reel.repack(2, 3)
      const told = [entry, corrected(reel, entry.id, 4, 0.3), corrected(reel, entry.id, 6, 0.5)]
      for (const place of order) await reel.send(told[place]!)
      expect([order, await reel.left()]).toEqual([order, 7.5])
    }
  })

  it('may put a repack where a reading stood', async () => {
    const reel = await withReel()
    const reading = aReading({ valveId: reel.valveId, takenAt: at(2) })
    await reel.send(reading, corrected(reel, reading.id, 4, 0.6))
    expect(await reel.left()).toBe(7.4)
    const other = await withReel()
    await other.send(corrected(other, reading.id, 4, 0.6), { ...reading, valveId: other.valveId })
    expect(await other.left()).toBe(7.4)
  })

  it('of an entry of another valve, or of a correction, moves nothing', async () => {
    const reel = await withReel()
    const { server, send, left, repack } = reel
    const other = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-2' }) })
    const entry = repack(2, 1)
    const first = corrected(reel, entry.id, 4, 2)
    await send(entry, first)
    await send(corrected({ ...reel, valveId: other.valveId }, entry.id, 5, null), corrected(reel, first.id, 6, null))
    expect(await left()).toBe(6)
  })

  it('of another valve moves nothing when both arrive in one file', async () => {
    const reel = await withReel()
    const { server, store, siteId, personIds, now } = reel
    const other = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-2' }) })
    const entry = reel.repack(2, 1)
    const foreign = corrected({ ...reel, valveId: other.valveId }, entry.id, 5, null)
    const by = { siteId, personId: personIds.fitter }
    await store.write((write) => appendEvents(write, by, [entry, foreign], now, { keepsForecasts: false }))
    expect(await reel.left()).toBe(7)
  })

  it('is flagged when what it puts in its place is not there', async () => {
    const reel = await withReel(2)
    const entry = reel.repack(2, 1)
    await reel.send(entry)
    expect(await reel.ofStore(corrected(reel, entry.id, 4, 2.5))).toMatchObject([
      [{ code: 'stock/below-nought', detail: "the store's books say only 2\u00a0m were left: count it" }],
    ])
  })
})

it('what an entry used is not taken back by hand: the entry is corrected', async () => {
  const { server, itemId, store, send, repack } = await withReel()
  await send(repack(2, 1))
  const used = await store.read.stockMovement.findFirst({ where: { kind: 'used' } })
  const movements = [aMovement('taken back', { itemId, corrects: used!.id })]
  expect(await server.call('planner', moveStock, { body: { movements } })).toMatchObject({
    status: 409,
    problem: { code: 'stock/not-to-take-back', detail: 'an entry from the field used it: correct the entry' },
  })
})

it('lots of two items are booked each to its own', async () => {
  const { server, valveId, itemId, lotId, send } = await withReel()
  const other = await anItem(server, { name: 'PTFE braid 8 mm' })
  const second = newId()
  await move(server, received(other, 5, { lotId: second }))
  const fromStore = [
    { lotId, amount: 1 as never },
    { lotId: second, amount: 2 as never },
  ]
  await send(aRepack({ valveId, takenAt: at(2), fromStore }))
  expect((await stockItem(server, itemId)).onHand).toBe(7)
  expect((await stockItem(server, other)).onHand).toBe(3)
})
