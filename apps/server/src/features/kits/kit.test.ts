import { sendEvents } from '@glandkeeper/contract/events'
import { makeRound } from '@glandkeeper/contract/rounds'
import { showKit } from '@glandkeeper/contract/kits'
import { aReading } from '@glandkeeper/fixtures/a-reading'
import { describe, expect, it } from 'vitest'
import { aMovement, aReel, anItem, cord, move, pressedRings, received } from '../../../testing/a-reel.ts'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { anOutage, aPlanInUse } from '../../../testing/planned-outage.ts'
import { packed } from '../../../testing/packed-valve.ts'
import { newId } from '../../platform/ids.ts'

const kitFor = (server: TestServer, query: { tag?: string; outageId?: string; roundId?: string }) =>
  server.expectOk('fitter', showKit, { query })

describe('the kit of a valve', () => {
  it('is cord from a reel, with what to wind: 8 wraps of 113.1 mm are 0.905 m', async () => {
    const server = await aServer()
    await packed(server, 'BH-1')
    const { itemId, lotId } = await aReel(server, 8, { label: 'R-7', batch: 'B-31' })
    const { title, valves, lines, open } = await kitFor(server, { tag: 'BH-1' })
    expect([title, valves, open]).toEqual(['Kit for BH-1', 1, []])
    expect(lines).toMatchObject([
      {
        itemId,
        name: cord.name,
        kind: 'cord',
        unit: 'm',
        onHand: 8,
        issued: 0,
        tags: ['BH-1'],
        short: [],
        waste: { wasted: 0, share: 0, bound: 0 },
        reels: [{ lotId, label: 'R-7', batch: 'B-31', length: 8000, isScrap: false }],
      },
    ])
    expect(lines[0]?.needed).toBeCloseTo(0.90478, 4)
    const [reel] = lines[0]?.reels ?? []
    expect(reel?.left).toBeCloseTo(8000 - 904.8, 1)
    expect(reel?.pieces).toEqual([
      { tag: 'BH-1', length: 904.8, count: 1, says: '7 rings: wind 8 wraps on a bar of 28.0\u00a0mm' },
    ])
  })

  it('counts pressed rings, and says how many are short', async () => {
    const server = await aServer()
    await packed(server, 'BH-1', 'graphite die-formed')
    const itemId = await anItem(server, pressedRings)
    await move(server, received(itemId, 4))
    const { lines } = await kitFor(server, { tag: 'BH-1' })
    expect(lines).toMatchObject([
      {
        itemId,
        kind: 'die-formed ring',
        unit: 'pc',
        needed: 6,
        onHand: 4,
        reels: [],
        short: ['2\u00a0pieces short'],
        waste: null,
      },
    ])
    await move(server, received(itemId, 2))
    expect((await kitFor(server, { tag: 'BH-1' })).lines).toMatchObject([{ short: [] }])
  })

  it('names what the store has no item for, and what cannot be worked out', async () => {
    const server = await aServer()
    await packed(server, 'BH-1', 'PTFE braid')
    await packed(server, 'BH-2', 'graphite braid', { gland: { boxDepth: null } })
    await aReel(server, 8)
    expect((await kitFor(server, { tag: 'BH-1' })).lines).toMatchObject([
      { itemId: null, name: 'PTFE braid, 8\u00a0mm', onHand: 0, short: ['the store has no item for it'], reels: [], waste: null },
    ])
    expect(await kitFor(server, { tag: 'BH-2' })).toMatchObject({
      lines: [],
      open: [{ says: 'box depth or nose not measured', tags: ['BH-2'] }],
    })
  })

  it('leaves expired reels where they are', async () => {
    const server = await aServer()
    await packed(server, 'BH-1')
    await aReel(server, 8, { expiresOn: '2026-05-03' })
    expect((await kitFor(server, { tag: 'BH-1' })).lines).toMatchObject([
      { onHand: 0, reels: [], short: ['BH-1: 0.9\u00a0m in one piece, and no reel left is as long'] },
    ])
  })
})

describe('what was issued', () => {
  const issued = (itemId: string, lotId: string, amount: number, about: { tag?: string; outageId?: string; takenAt?: string }) =>
    aMovement('issued', { itemId, lotId, amount, tag: null, outageId: null, ...about })

  it('for a valve since it was packed is cut first; before, it went into the packing that is in it', async () => {
    const server = await aServer()
    await packed(server, 'BH-1')
    const { itemId, lotId } = await aReel(server, 8)
    await move(server, issued(itemId, lotId, 2, { tag: 'BH-1', takenAt: '2026-03-01T08:00:00Z' }))
    expect((await kitFor(server, { tag: 'BH-1' })).lines).toMatchObject([{ issued: 0, reels: [{ label: 'R-1', length: 6000 }] }])
    await move(server, issued(itemId, lotId, 1, { tag: 'BH-1' }))
    const [line] = (await kitFor(server, { tag: 'BH-1' })).lines
    expect(line).toMatchObject({ issued: 1, onHand: 5, reels: [{ lotId, label: 'R-1, issued', length: 1000, isScrap: true }] })
    expect(line?.reels[0]?.left).toBeCloseTo(95.2, 1)
  })

  it('and taken back was not issued', async () => {
    const server = await aServer()
    await packed(server, 'BH-1')
    const { itemId, lotId } = await aReel(server, 8)
    const wrong = issued(itemId, lotId, 1, { tag: 'BH-1' })
    await move(server, wrong, aMovement('taken back', { itemId, corrects: wrong.movementId }))
    expect((await kitFor(server, { tag: 'BH-1' })).lines).toMatchObject([{ issued: 0, onHand: 8 }])
  })

  it('for an outage counts in its kit, what was issued for another does not', async () => {
    const server = await aServer()
    await packed(server, 'BH-1')
    await packed(server, 'BH-2')
    const [outageId, other] = [await anOutage(server), await anOutage(server, { name: 'Another' })]
    await aPlanInUse(server, `outage:${outageId}`, ['BH-1', 'BH-2'])
    const { itemId, lotId } = await aReel(server, 8)
    await move(
      server,
      issued(itemId, lotId, 1.5, { outageId }),
      issued(itemId, lotId, 2.5, { outageId: other }),
      issued(itemId, lotId, 0.5, { outageId: other, tag: 'BH-1', takenAt: '2026-03-01T08:00:00Z' }),
    )
    const { lines } = await kitFor(server, { outageId })
    expect(lines).toMatchObject([
      {
        issued: 1.5,
        onHand: 3.5,
        reels: [
          { label: 'R-1, issued', pieces: [{ count: 1 }], length: 1500, isScrap: false },
          { label: 'R-1', pieces: [{ count: 1 }], length: 3500 },
        ],
      },
    ])
  })
})

describe('the kit of an outage', () => {
  it('has the valves that the plan in use has in it, summed by item', async () => {
    const server = await aServer()
    for (const tag of ['BH-1', 'BH-2', 'BH-3']) await packed(server, tag)
    await packed(server, 'BH-4', 'graphite die-formed')
    const outageId = await anOutage(server)
    const planId = await aPlanInUse(server, `outage:${outageId}`, ['BH-1', 'BH-2', 'BH-3', 'BH-4'])
    const elsewhere = { where: { planId, valve: { tag: 'BH-2' } }, data: { slotId: 'fortnight:2026-05-18' } }
    await server.store.write((write) => write.plannedRepack.updateMany(elsewhere))
    await aReel(server, 8)
    const rings = await anItem(server, pressedRings)
    const kit = await kitFor(server, { outageId })
    expect(kit).toMatchObject({ title: 'Kit for Short stop in June', valves: 3, open: [] })
    expect(kit.lines.map(({ name, tags }) => [name, tags])).toEqual([
      [cord.name, ['BH-1', 'BH-3']],
      [pressedRings.name, ['BH-4']],
    ])
    expect(kit.lines[0]?.needed).toBeCloseTo(2 * 0.90478, 4)
    expect(kit.lines[1]).toMatchObject({ itemId: rings, needed: 6 })
  })

  it('is empty where no plan is in use', async () => {
    const server = await aServer()
    await packed(server, 'BH-1')
    const outageId = await anOutage(server)
    expect(await kitFor(server, { outageId })).toEqual({ title: 'Kit for Short stop in June', valves: 0, lines: [], open: [] })
  })
})

it('the kit of a round is for its stops that are likely to be repacked', async () => {
  const server = await aServer()
  const spent = await packed(server, 'BH-1')
  await packed(server, 'BH-2')
  const reading = aReading({ valveId: spent, takenAt: '2026-04-02T07:10:00Z', gapLeft: 3, gapRight: 3 })
  await server.expectOk('fitter', sendEvents, { body: { events: [reading] } })
  await server.expectOk('planner', makeRound, {
    body: { name: 'Monday', walkOn: '2026-05-11', fitterId: null, areaCodes: ['BH'], dueBy: null } as never,
  })
  const round = await server.store.read.round.findFirst()
  const kit = await kitFor(server, { roundId: round!.id })
  expect(kit).toMatchObject({ title: 'Kit for the round Monday', valves: 1, lines: [{ tags: ['BH-1'] }] })
})

it('is refused for what is not there, and without saying for what', async () => {
  const server = await aServer()
  const ask = (query: object) => server.call('fitter', showKit, { query: query as never })
  expect(await ask({ tag: 'NO-1' })).toMatchObject({ status: 404, problem: { code: 'valve/unknown' } })
  expect(await ask({ outageId: newId() })).toMatchObject({ status: 404, problem: { code: 'outage/unknown' } })
  expect(await ask({ roundId: newId() })).toMatchObject({ status: 404, problem: { code: 'round/unknown' } })
  expect(await ask({})).toMatchObject({ status: 422 })
  expect(await ask({ tag: 'NO-1', roundId: newId() })).toMatchObject({ status: 422 })
})
