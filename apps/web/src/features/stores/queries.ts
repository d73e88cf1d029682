import type { BodyIn, QueryIn } from '@glandkeeper/contract/endpoint'
import {
  addStockItem,
  changeStockItem,
  listStock,
  listStockMovements,
  moveStock,
  showStockOutlook,
  type StockItem,
} from '@glandkeeper/contract/stores'
import { type KitLine, showKit } from '@glandkeeper/contract/kits'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call, Unreachable } from '../../platform/client.ts'
import { keptStock } from '../pocket/queries.ts'

// Words without a component, for features that name reels.
export { formatAmount } from './amount-words.ts'

const stockKey = ['stock'] as const

export const stockOfSite = queryOptions({
  queryKey: [...stockKey, 'items'],
  queryFn: ({ signal }) => call(listStock, { signal }),
})

/** The store as it is now; without a network, as this device last heard of it. */
export const stockInReach = queryOptions({
  queryKey: [...stockKey, 'in reach'],
  queryFn: async ({ signal }): Promise<readonly StockItem[]> => {
    try {
      return (await call(listStock, { signal })).items
    } catch (error) {
      if (!(error instanceof Unreachable)) throw error
      return listStock.ok.safeParse(await keptStock()).data?.items ?? []
    }
  },
})

export const stockOutlook = queryOptions({
  queryKey: [...stockKey, 'outlook'],
  queryFn: ({ signal }) => call(showStockOutlook, { signal }),
})

export const movementsOfItem = (itemId: string) =>
  queryOptions({
    queryKey: [...stockKey, 'movements', itemId],
    queryFn: ({ signal }) => call(listStockMovements, { params: { itemId }, signal }),
  })

export type ReelToCut = KitLine['reels'][number]
export type KitAsked = QueryIn<typeof showKit>

export const kitAsked = (query: KitAsked) =>
  queryOptions({
    queryKey: [...stockKey, 'kit', query],
    queryFn: ({ signal }) => call(showKit, { query, signal }),
  })

/** What moves stock changes every list, outlook and kit: all are read again, after a refusal too. */
function useStockChange<Input, Output>(change: (input: Input) => Promise<Output>) {
  const queries = useQueryClient()
  return useMutation({ mutationFn: change, onSettled: () => queries.invalidateQueries({ queryKey: stockKey }) })
}

/** Adds an item, or changes the one given. */
export const useSaveItem = (item: StockItem | null) =>
  useStockChange((body: BodyIn<typeof addStockItem>) =>
    item === null
      ? call(addStockItem, { body })
      : call(changeStockItem, { params: { itemId: item.itemId }, body: { revision: item.revision, item: body } }),
  )

export type MovementInput = BodyIn<typeof moveStock>['movements'][number]

const MOST_AT_ONCE = 100

/** Puts down what happened, in portions that the server takes. Sent again after a cut it doubles nothing. */
export const useMoveStock = () =>
  useStockChange(async (movements: readonly MovementInput[]) => {
    for (let from = 0; from < movements.length; from += MOST_AT_ONCE)
      await call(moveStock, { body: { movements: movements.slice(from, from + MOST_AT_ONCE) } })
  })
