import { addStockItem, changeStockItem, listStock, listStockMovements, moveStock } from '@glandkeeper/contract/stores'
import { addValve } from '@glandkeeper/contract/valves'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { aMovement, anItem, aReel, cord, move, pressedRings, received, stockItem } from '../../../testing/a-reel.ts'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { newId } from '../../platform/ids.ts'

const shown = async (server: TestServer, itemId: string) =>
  (await server.expectOk('fitter', listStockMovements, { params: { itemId } })).movements
const notes = (server: TestServer) => server.store.read.registerChange.findMany({ orderBy: { id: 'asc' } })

describe('an item of the store', () => {
  it('is added empty, listed by kind and name, and noted', async () => {
    const server = await aServer()
    const rings = await server.expectOk('engineer', addStockItem, { body: pressedRings })
    const braid = await server.expectOk('planner', addStockItem, { body: cord })
    expect(braid).toMatchObject({ ...cord, unit: 'm', revision: 1, onHand: 0, lots: [], onOrder: [] })
    expect(rings).toMatchObject({ unit: 'pc', boxBore: 44, stemDiameter: 28 })
    expect((await server.expectOk('fitter', listStock)).items).toEqual([braid, rings])
    expect(await notes(server)).toMatchObject([
      { subject: 'stock item', subjectId: rings.itemId, what: 'stock item added', personId: server.personIds.engineer },
      { subject: 'stock item', subjectId: braid.itemId, what: 'stock item added', personId: server.personIds.planner },
    ])
  })

  it('has a name of its own, capitals apart; the same cord twice is two suppliers', async () => {
    const server = await aServer()
    const itemId = await anItem(server)
    const taken = { status: 409, problem: { code: 'stock/name-taken' } }
    expect(await server.call('planner', addStockItem, { body: { ...cord, name: 'GRAPHITE braid 8 mm' } })).toMatchObject(taken)
    const other = await anItem(server, { name: 'Graphite braid 8 mm, second line' })
    const body = { revision: 1, item: cord }
    expect(await server.call('planner', changeStockItem, { params: { itemId: other }, body })).toMatchObject(taken)
    await server.expectOk('planner', changeStockItem, { params: { itemId }, body })
  })

  it('is changed by whoever saw it last, and noted with before and after', async () => {
    const server = await aServer()
    const itemId = await anItem(server)
    const change = (revision: number, leastStock: number) =>
      server.call('planner', changeStockItem, { params: { itemId }, body: { revision, item: { ...cord, leastStock } } })
    expect(await change(1, 12)).toMatchObject({ ok: true, value: { revision: 2, leastStock: 12 } })
    expect(await change(1, 16)).toMatchObject({ status: 409, problem: { code: 'stock/changed-meanwhile' } })
    const note = (await notes(server)).at(-1)
    expect([note?.before, note?.after].map((text) => (JSON.parse(text ?? '') as { leastStock: number }).leastStock)).toEqual([
      4, 12,
    ])
  })

  it('stays what it is once something of it moved', async () => {
    const server = await aServer()
    const itemId = await anItem(server)
    const change = (revision: number, kind: 'cord' | 'spacer') =>
      server.call('planner', changeStockItem, {
        params: { itemId },
        body: { revision, item: { ...cord, kind, boxBore: 44, stemDiameter: 28, length: 10 } },
      })
    expect(await change(1, 'spacer')).toMatchObject({ ok: true, value: { unit: 'pc' } })
    expect(await change(2, 'cord')).toMatchObject({ ok: true })
    await move(server, received(itemId, 8))
    expect(await change(3, 'spacer')).toMatchObject({ status: 422, problem: { errors: [{ pointer: '#/item/kind' }] } })
  })

  it('is for planner and engineer to keep, and of one site', async () => {
    const server = await aServer()
    const itemId = await anItem(server)
    const body = { revision: 1, item: cord }
    expect((await server.call('fitter', addStockItem, { body: pressedRings })).status).toBe(403)
    expect((await server.call('fitter', changeStockItem, { params: { itemId }, body })).status).toBe(403)
    await server.store.write(async (write) => {
      await write.site.create({ data: { id: 'other', name: 'Other', timeZone: 'Europe/London', createdAt: server.now } })
      await write.stockItem.update({ where: { id: itemId }, data: { siteId: 'other' } })
    })
    const unknown = { status: 404, problem: { code: 'stock/unknown' } }
    expect(await server.call('planner', changeStockItem, { params: { itemId }, body })).toMatchObject(unknown)
    expect(await server.call('planner', listStockMovements, { params: { itemId } })).toMatchObject(unknown)
    expect((await server.expectOk('fitter', listStock)).items).toEqual([])
  })
})

describe('what moves', () => {
  it('ordered, received, issued for a valve, returned and counted: the item follows', async () => {
    const server = await aServer()
    await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-1' }) })
    const itemId = await anItem(server)
    const orderId = newId()
    await move(server, aMovement('ordered', { movementId: orderId, itemId, amount: 16, expectedOn: '2026-05-20' }))
    expect(await stockItem(server, itemId)).toMatchObject({
      onHand: 0,
      onOrder: [{ orderId, amount: 16, expectedOn: '2026-05-20' }],
    })

    const lotId = newId()
    const at = (hour: number) => ({ itemId, lotId, takenAt: `2026-05-02T${hour}:00:00+01:00` })
    const { items } = await move(
      server,
      received(itemId, 16, { ...at(10), label: 'R-7', batch: 'B-31', expiresOn: '2027-05-01', orderId }),
      aMovement('issued', { ...at(11), amount: 5.5, tag: 'BH-1', outageId: null, note: 'for the evening' }),
      aMovement('returned', { ...at(12), amount: 1.2 }),
    )
    const reel = { lotId, label: 'R-7', batch: 'B-31', amount: 11.7, expiresOn: '2027-05-01', isExpired: false }
    expect(items).toMatchObject([{ itemId, onHand: 11.7, onOrder: [], lots: [reel] }])
    await move(server, aMovement('counted', { ...at(13), amount: 11.5 }))
    expect(await stockItem(server, itemId)).toMatchObject({ onHand: 11.5, lots: [{ ...reel, amount: 11.5 }] })

    const told = (await shown(server, itemId)).map(({ label, change, says, by }) => [
      label,
      change,
      says.replaceAll('\u00a0', ' '),
      by,
    ])
    expect(told).toEqual([
      ['R-7', -0.2, 'Counted: 11.5 m there.', 'The fitter'],
      ['R-7', 1.2, 'Returned 1.2 m.', 'The fitter'],
      ['R-7', -5.5, 'Issued 5.5 m for BH-1. for the evening', 'The fitter'],
      ['R-7', 16, 'Received 16 m, batch B-31, good until 1 May 2027.', 'The fitter'],
      ['', 0, 'Ordered 16 m, expected 20 May 2026.', 'The fitter'],
    ])
  })

  it('sent twice is one; the same id with other words is refused, and all of its request with it', async () => {
    const server = await aServer()
    const itemId = await anItem(server)
    const first = received(itemId, 8)
    await move(server, first)
    await move(server, first, first)
    expect(await stockItem(server, itemId)).toMatchObject({ onHand: 8 })
    const other = { ...first, amount: 9 }
    const refused = { status: 409, problem: { code: 'stock/id-reused' } }
    expect(await server.call('fitter', moveStock, { body: { movements: [received(itemId, 8), other] } })).toMatchObject(refused)
    const sameLot = { ...received(itemId, 8), lotId: (first as { lotId: string }).lotId }
    expect(await server.call('fitter', moveStock, { body: { movements: [received(itemId, 8), sameLot] } })).toMatchObject(refused)
    expect(await server.store.read.stockMovement.count()).toBe(1)
    expect(await server.store.read.stockLot.count()).toBe(1)
  })

  it('is a fact and is kept though it leaves less than nothing', async () => {
    const server = await aServer()
    const { itemId, lotId } = await aReel(server, 2)
    await move(server, aMovement('issued', { itemId, lotId, amount: 3.5, tag: null, outageId: null }))
    expect(await stockItem(server, itemId)).toMatchObject({ onHand: -1.5, lots: [{ amount: -1.5 }] })
  })

  it('names nothing that is not there: item, lot, order, valve, outage, a lot of another item, a day to come', async () => {
    const server = await aServer()
    const { itemId, lotId } = await aReel(server, 8)
    const other = await anItem(server, { name: 'Other' })
    const issued = { itemId, lotId, amount: 1, tag: null, outageId: null }
    const cases = [
      ['stock/unknown', received(newId(), 8)],
      ['stock/unknown', aMovement('issued', { ...issued, lotId: newId() })],
      ['stock/unknown', aMovement('counted', { itemId: other, lotId, amount: 1 })],
      ['stock/unknown', received(itemId, 8, { orderId: newId() })],
      ['valve/unknown', aMovement('issued', { ...issued, tag: 'NO-1' })],
      ['outage/unknown', aMovement('issued', { ...issued, outageId: newId() })],
      ['event/in-the-future', received(itemId, 8, { takenAt: '2026-05-05T09:00:01Z' })],
    ] as const
    for (const [code, movement] of cases)
      expect(await server.call('fitter', moveStock, { body: { movements: [received(itemId, 8), movement] } })).toMatchObject({
        problem: { code },
      })
    expect(await server.store.read.stockMovement.count()).toBe(1)
    await move(server, received(itemId, 8, { takenAt: '2026-05-05T09:00:00Z' }))
    expect(await server.store.read.stockMovement.count()).toBe(2)
  })
})

describe('a movement that is taken back', () => {
  it('no more counts, stays on record struck through, and is taken back once', async () => {
    const server = await aServer()
    const { itemId, lotId } = await aReel(server, 8)
    const wrong = aMovement('issued', { itemId, lotId, amount: 3, tag: null, outageId: null })
    await move(server, wrong)
    const back = () => aMovement('taken back', { itemId, corrects: wrong.movementId, takenAt: '2026-05-02T08:00:00Z' })
    const first = back()
    await move(server, first)
    await move(server, first)
    expect(await stockItem(server, itemId)).toMatchObject({ onHand: 8 })
    expect(await shown(server, itemId)).toMatchObject([
      { kind: 'taken back', label: 'R-1', change: 0, says: 'Taken back: issued 3\u00a0m.', isTakenBack: false },
      { kind: 'issued', change: 0, isTakenBack: true },
      { kind: 'received', change: 8, isTakenBack: false },
    ])
    const refused = { status: 409, problem: { code: 'stock/not-to-take-back', detail: 'it is taken back already' } }
    expect(await server.call('fitter', moveStock, { body: { movements: [back()] } })).toMatchObject(refused)
  })

  it('is one of the same item, and no taking back itself', async () => {
    const server = await aServer()
    const { itemId, lotId } = await aReel(server, 8)
    const other = await anItem(server, { name: 'Other' })
    const wrong = aMovement('returned', { itemId, lotId, amount: 3 })
    const back = aMovement('taken back', { itemId, corrects: wrong.movementId })
    const refused = { status: 409, problem: { code: 'stock/not-to-take-back' } }
    const send = (...movements: (typeof back)[]) => server.call('fitter', moveStock, { body: { movements } })
    expect(await send(wrong, aMovement('taken back', { itemId: other, corrects: wrong.movementId }))).toMatchObject(refused)
    expect(await send(wrong, back, aMovement('taken back', { itemId, corrects: back.movementId }))).toMatchObject(refused)
    expect(await send(aMovement('taken back', { itemId, corrects: newId() }))).toMatchObject(refused)
    expect(await send(wrong, back)).toMatchObject({ ok: true })
  })

  it('leaves an order awaited again when it was its receipt', async () => {
    const server = await aServer()
    const itemId = await anItem(server)
    const order = aMovement('ordered', { itemId, amount: 8, expectedOn: '2026-06-01' })
    const receipt = received(itemId, 8, { orderId: order.movementId })
    await move(server, order, receipt)
    expect(await stockItem(server, itemId)).toMatchObject({ onHand: 8, onOrder: [] })
    await move(server, aMovement('taken back', { itemId, corrects: receipt.movementId }))
    expect(await stockItem(server, itemId)).toMatchObject({ onHand: 0, lots: [], onOrder: [{ amount: 8 }] })
  })
})

it('a lot is good to the end of its day at the site, and then no more on hand', async () => {
  // Half an hour after midnight of the third in London, and still the second in UTC.
  for (const [now, isExpired] of [
    ['2026-05-02T22:30:00Z', false],
    ['2026-05-02T23:30:00Z', true],
  ] as const) {
    const server = await aServer({ clock: () => new Date(now) })
    const { itemId } = await aReel(server, 8, { expiresOn: '2026-05-02' })
    await move(server, received(itemId, 3, { label: 'R-2', expiresOn: '2026-06-01' }))
    const item = await stockItem(server, itemId)
    expect(item.lots).toMatchObject([
      { label: 'R-1', amount: 8, isExpired },
      { label: 'R-2', isExpired: false },
    ])
    expect(item.onHand).toBe(isExpired ? 3 : 11)
  }
})

it('movements cannot be changed or removed, even past the program', async () => {
  const server = await aServer()
  await aReel(server, 8)
  const change = (sql: string) => server.store.write((write) => write.$executeRawUnsafe(sql))
  await expect(change('UPDATE stock_movement SET amount = 9')).rejects.toThrow()
  await expect(change('DELETE FROM stock_movement')).rejects.toThrow()
  expect(await server.store.read.stockMovement.findMany()).toMatchObject([{ amount: 8 }])
})
