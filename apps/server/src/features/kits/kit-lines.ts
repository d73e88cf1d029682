import type { StockItem } from '@glandkeeper/contract/stores'
import type { KitLine } from '@glandkeeper/contract/kits'
import { groupedBy } from '../../platform/grouped-by.ts'
import { amountInWords, itemForNeed, packingInWords, type PackingNeed, withoutDust } from '../stock/index.ts'
import { type CordAtHand, type CuttingPlan, cuttingPlan } from './cutting-plan.ts'
import type { Issued } from './issued.ts'

export interface ValveNeed {
  readonly tag: string
  readonly need: PackingNeed
}

/** What the valves take, summed by the item of the store that serves it; what it has no item for comes last. */
export function kitLines(needs: readonly ValveNeed[], items: readonly StockItem[], issued: readonly Issued[]): KitLine[] {
  const byId = new Map(items.map((item) => [item.itemId, item]))
  const groups = groupedBy(needs, ({ need }) => itemForNeed(items, need)?.itemId ?? packingInWords(need))
  const lines = [...groups].map(([key, valves]) => lineOf(valves, byId.get(key) ?? null, issued))
  return lines.toSorted(
    (one, other) => Number(one.itemId === null) - Number(other.itemId === null) || (one.name < other.name ? -1 : 1),
  )
}

const MILLIMETRES_IN_A_METRE = 1000

/** What is cut or counted out; what is wasted with it the cutting plan says. */
const cutOf = (need: PackingNeed) => (need.kind === 'cord' ? need.pieceMm / MILLIMETRES_IN_A_METRE : need.rings)

function lineOf(valves: readonly ValveNeed[], item: StockItem | null, allIssued: readonly Issued[]): KitLine {
  const [first] = valves
  const needed = withoutDust(valves.reduce((sum, { need }) => sum + cutOf(need), 0)) as KitLine['needed']
  const issued = allIssued.filter(({ itemId }) => itemId === item?.itemId)
  const isCord = first?.need.kind === 'cord'
  const line = {
    itemId: item?.itemId ?? null,
    name: item?.name ?? (first ? packingInWords(first.need) : ''),
    kind: isCord ? ('cord' as const) : ('die-formed ring' as const),
    unit: isCord ? ('m' as const) : ('pc' as const),
    needed,
    onHand: (item?.onHand ?? 0) as KitLine['onHand'],
    issued: withoutDust(issued.reduce((sum, { amount }) => sum + amount, 0)) as KitLine['issued'],
    tags: valves.map(({ tag }) => tag),
  }
  if (item === null) return { ...line, reels: [], short: ['the store has no item for it'], waste: null }
  return { ...line, ...(isCord ? cutFor(valves, item, issued) : piecesFor(line)) }
}

function cutFor(valves: readonly ValveNeed[], { lots }: StockItem, issued: readonly Issued[]): CuttingPlan {
  return cuttingPlan({
    pieces: valves.flatMap(({ tag, need }) => (need.kind === 'cord' ? [{ tag, need }] : [])),
    issued: issued.map(({ movementId, lot, amount }): CordAtHand => {
      return {
        id: movementId,
        lotId: lot.lotId,
        label: `${lot.label}, issued`,
        batch: lot.batch,
        metres: amount,
        expiresOn: null,
      }
    }),
    inStore: lots
      .filter(({ amount, isExpired }) => amount > 0 && !isExpired)
      .map(({ amount, ...lot }) => ({ ...lot, id: lot.lotId, metres: amount })),
  })
}

function piecesFor({ needed, onHand, issued }: Pick<KitLine, 'needed' | 'onHand' | 'issued'>): CuttingPlan {
  const missing = needed - issued - Math.max(0, onHand)
  return { reels: [], short: missing > 0 ? [`${amountInWords(missing, 'pc')} short`] : [], waste: null }
}
