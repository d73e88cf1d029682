import { addStockItem, changeStockItem, listStock, listStockMovements, moveStock } from '@glandkeeper/contract/stores'
import type { FastifyInstance } from 'fastify'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import { changeItem, createItem } from './items.ts'
import { putMovements } from './move.ts'
import { movementsShown } from './movements-shown.ts'
import { stockOf } from './present.ts'

export { amountInWords } from './amount-in-words.ts'
export { itemForNeed } from './item-for-need.ts'
export { createItem } from './items.ts'
export { putMovements } from './move.ts'
export { packingNeeds } from './needs.ts'
export {
  amountOf,
  type CordNeed,
  needInWords,
  type OpenNeed,
  packingInWords,
  type PackingNeed,
  ringsInWords,
} from './packing-need.ts'
export { stockOf, todayOf } from './present.ts'
export { withoutDust } from './stock-as-moved.ts'
export { stockLimits } from './stock-limits.ts'
export { takenBackOf } from './taken-back-of.ts'
export { useStockOfEvents } from './uses.ts'

export function stockRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  const shown = async (siteId: string, itemId: string) => {
    const [item] = await stockOf(store.read, siteId, clock(), [itemId])
    if (!item) throw new Refusal('stock/unknown', itemId)
    return item
  }
  route(app, platform, listStock, async ({ me }) => ({ items: await stockOf(store.read, me.siteId, clock()) }))

  route(app, platform, addStockItem, async ({ body, me }) => {
    const itemId = await store.write((write) => createItem(write, me, body, clock()))
    return shown(me.siteId, itemId)
  })

  route(app, platform, changeStockItem, async ({ params, body, me }) => {
    await store.write((write) => changeItem(write, me, params.itemId, body, clock()))
    return shown(me.siteId, params.itemId)
  })

  route(app, platform, moveStock, async ({ body: { movements }, me }) => {
    await store.write((write) => putMovements(write, me, movements, clock()))
    const itemIds = [...new Set(movements.map(({ itemId }) => itemId))]
    return { items: await stockOf(store.read, me.siteId, clock(), itemIds) }
  })

  route(app, platform, listStockMovements, async ({ params, me }) => ({
    movements: await movementsShown(store.read, me.siteId, params.itemId),
  }))
}
