import { listStock, listStockMovements } from '@glandkeeper/contract/stores'
import { expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { putDemoStores } from './demo-stores.ts'

it('the demo has reels and part reels with their batches, one item short, one order late, one lot expired', async () => {
  const server = await aServer()
  const { siteId, personIds, now } = server
  const by = { siteId, personId: personIds.planner }
  await server.store.write((write) => putDemoStores(write, by, { today: '2026-05-04', now }))
  const { items } = await server.expectOk('fitter', listStock)
  expect(items.length).toBeGreaterThan(25)
  const find = (name: string) => items.find((item) => item.name === name)
  expect(find('PTFE braid 8 mm')).toMatchObject({ onHand: 2, leastStock: 4, leadTimeDays: 42 })
  expect(find('PTFE braid 16 mm')?.onOrder).toMatchObject([{ amount: 16, expectedOn: '2026-04-25' }])
  expect(find('graphite rings 22 in 35 mm')).toMatchObject({ unit: 'pc', onHand: 20 })
  const expired = items.flatMap(({ lots }) => lots.filter(({ isExpired }) => isExpired))
  expect(expired).toMatchObject([{ amount: 2.8, expiresOn: '2026-04-14' }])
  const moved = await server.store.read.stockMovement.findMany()
  expect(moved.filter(({ takenAt }) => takenAt > now)).toEqual([])
  const { movements } = await server.expectOk('fitter', listStockMovements, {
    params: { itemId: find('natural fibre braid 9.5 mm')!.itemId },
  })
  expect(movements.map(({ kind }) => kind)).toEqual(['issued', 'received'])
})
