import type { StockItem, StockOutlook } from '@glandkeeper/contract/stores'
import { groupedBy } from '../../platform/grouped-by.ts'
import { daysAfter } from '../../platform/local-time.ts'
import type { Read } from '../../platform/store.ts'
import { outageOfSlot, repackPlanInUse } from '../repack-plans/index.ts'
import { amountOf, itemForNeed, packingInWords, type PackingNeed, packingNeeds } from '../stock/index.ts'
import { type Issued, issuedFor } from './issued.ts'
import { needsByValve } from './needs-by-valve.ts'

/** What a slot takes of an item, on its likeliest first day. */
export interface SlotDemand {
  readonly itemId: StockOutlook['itemId']
  readonly on: string
  readonly amount: number
  /** The slot by name. */
  readonly for: string
}

export interface PlanDemand {
  readonly demand: readonly SlotDemand[]
  readonly unknown: readonly { readonly needs: string; readonly tags: string[] }[]
  readonly open: readonly { readonly says: string; readonly tags: string[] }[]
  /** The last day that is looked at. */
  readonly until: string
}

/** How far is looked ahead while no plan is in use. */
const A_YEAR = 365

interface Slot {
  readonly kind: 'outage' | 'fortnight'
  readonly slotId: string
  readonly name: string
  readonly likelyOn: string
}

interface Planned {
  readonly valveId: string
  readonly tag: string
  readonly packedAt: Date | null
  readonly slot: Slot
}

/** What the plan in use still takes: less what was packed since it was made, and what has been issued for it. */
export async function demandOfPlan(read: Read, siteId: string, items: readonly StockItem[], today: string): Promise<PlanDemand> {
  const plan = await repackPlanInUse(read, siteId)
  if (!plan) return { demand: [], unknown: [], open: [], until: daysAfter(today, A_YEAR) }
  const planned = await stillPlanned(read, plan)
  const ids = planned.map(({ valveId }) => valveId)
  const { needs, open } = needsByValve(planned, await packingNeeds(read, siteId, ids))
  const served = needs.map((valve) => ({ ...valve, item: itemForNeed(items, valve.need) }))
  const unknown = groupedBy(served, ({ need, item }) => (item === null ? packingInWords(need) : null))
  const endsOn = daysAfter(plan.startsOn, plan.weeks * 7)
  return {
    demand: demandOf(served, await issuedForSlots(read, siteId, planned)),
    unknown: [...unknown].map(([packing, valves]) => ({ needs: packing, tags: tagsOf(valves) })),
    open,
    until: endsOn > today ? endsOn : today,
  }
}

const tagsOf = (valves: readonly { readonly tag: string }[]) => valves.map(({ tag }) => tag)

async function stillPlanned(
  read: Read,
  plan: { readonly id: string; readonly madeAt: Date; readonly summary: string },
): Promise<Planned[]> {
  const { slots = [] } = JSON.parse(plan.summary) as { slots?: Slot[] }
  const byId = new Map(slots.map((slot) => [slot.slotId, slot]))
  const rows = await read.plannedRepack.findMany({
    where: { planId: plan.id, slotId: { not: null }, valve: { retiredAt: null } },
    orderBy: { valveId: 'asc' },
    select: { valveId: true, slotId: true, valve: { select: { tag: true, state: { select: { packedAt: true } } } } },
  })
  return rows.flatMap(({ valveId, slotId, valve: { tag, state } }) => {
    const slot = byId.get(slotId ?? '')
    const packedAt = state?.packedAt ?? null
    return slot && !(packedAt !== null && packedAt > plan.madeAt) ? [{ valveId, tag, packedAt, slot }] : []
  })
}

type Served = Planned & { readonly need: PackingNeed; readonly item: StockItem | null }

/** By slot and item, as one text. */
const keyOf = (slotId: string, itemId: string) => `${slotId} ${itemId}`

function demandOf(served: readonly Served[], issued: ReadonlyMap<string, number>): SlotDemand[] {
  const groups = groupedBy(served, ({ slot, item }) => (item === null ? null : keyOf(slot.slotId, item.itemId)))
  return [...groups].flatMap(([key, valves]): SlotDemand[] => {
    const { slot, item } = valves[0] ?? {}
    const amount = valves.reduce((sum, { need }) => sum + amountOf(need), 0) - (issued.get(key) ?? 0)
    if (!slot || !item || !(amount > 0)) return []
    return [
      {
        itemId: item.itemId,
        on: slot.likelyOn,
        amount,
        for: slot.kind === 'fortnight' ? 'repacks while the plant runs' : slot.name,
      },
    ]
  })
}

/** What has been handed out for each slot, by slot and item. */
async function issuedForSlots(read: Read, siteId: string, planned: readonly Planned[]): Promise<Map<string, number>> {
  const slotOfValve = new Map(planned.map(({ valveId, slot }) => [valveId, slot.slotId]))
  const slotOfOutage = new Map(
    planned.flatMap(({ slot }) => {
      const outageId = outageOfSlot(slot.slotId)
      return outageId === null ? [] : [[outageId, slot.slotId] as const]
    }),
  )
  const issued = await issuedFor(read, siteId, { valves: planned, outageIds: [...slotOfOutage.keys()] })
  const slotOf = ({ outageId, valveId }: Issued) => slotOfOutage.get(outageId ?? '') ?? slotOfValve.get(valveId ?? '') ?? ''
  const sums = new Map<string, number>()
  for (const one of issued) {
    const key = keyOf(slotOf(one), one.itemId)
    sums.set(key, (sums.get(key) ?? 0) + one.amount)
  }
  return sums
}
