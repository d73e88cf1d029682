import { StockItemInput, StockMovement } from '@glandkeeper/contract/stores'
import { type PlantItem, type PlantLot, plantStore } from '@glandkeeper/fixtures/demo-plant/stores'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { daysAfter } from '../../platform/local-time.ts'
import type { Write } from '../../platform/store.ts'
import { createItem, putMovements } from '../stock/index.ts'

/** The packing store of the demo plant: reels and part reels with their batches, and what is on order. */
export async function putDemoStores(
  write: Write,
  by: Pick<SignedIn, 'siteId' | 'personId'>,
  { today, now }: { readonly today: string; readonly now: Date },
): Promise<void> {
  for (const { lots, orders, ...item } of plantStore()) {
    const itemId = await createItem(write, by, StockItemInput.parse(item), now)
    const movements = [
      ...lots.flatMap((lot) => ofLot(itemId, lot, today)),
      ...orders.map((order) => ofOrder(itemId, order, today)),
    ]
    await putMovements(write, by, StockMovement.array().parse(movements), now)
  }
}

/** Earlier than anybody of today works, so that a start in the morning has nothing in the future. */
const onDay = (today: string, daysAgo: number) => `${daysAfter(today, -daysAgo)}T00:00:00Z`

function ofLot(itemId: string, { label, batch, received, receivedDaysAgo, issued, goodForDays }: PlantLot, today: string) {
  const lotId = newId()
  const own = () => ({ movementId: newId(), itemId, lotId, note: '' })
  const expiresOn = goodForDays === null ? null : daysAfter(today, goodForDays)
  const receipt = {
    ...own(),
    kind: 'received',
    takenAt: onDay(today, receivedDaysAgo),
    label,
    batch,
    amount: received,
    expiresOn,
    orderId: null,
  }
  const issue = {
    ...own(),
    kind: 'issued',
    takenAt: onDay(today, Math.floor(receivedDaysAgo / 2)),
    amount: issued,
    tag: null,
    outageId: null,
  }
  return issued > 0 ? [receipt, issue] : [receipt]
}

function ofOrder(itemId: string, { amount, orderedDaysAgo, expectedInDays }: PlantItem['orders'][number], today: string) {
  const expectedOn = daysAfter(today, expectedInDays)
  return { movementId: newId(), itemId, kind: 'ordered', takenAt: onDay(today, orderedDaysAgo), note: '', amount, expectedOn }
}
