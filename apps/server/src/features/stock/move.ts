import type { StockMovement } from '@glandkeeper/contract/stores'
import type { SignedIn } from '../../platform/auth.ts'
import { canonicalJson } from '../../platform/chain.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Write } from '../../platform/store.ts'
import { itemOf } from './items.ts'
import { lotFor, movementToTakeBack, newLotId, orderFor, placeFor } from './known-to-store.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

/** A clock may be wrong by a day, as with entries from the field; past that nobody knows what the date means. */
const FARTHEST_AHEAD_MILLISECONDS = 24 * 3_600_000

/**
 * Puts down what happened, all of it or nothing. What is known already, word for word, stays as it is. A fact is never
 * refused for what it leaves of the stock, only where it cannot be understood.
 */
export async function putMovements(write: Write, by: By, movements: readonly StockMovement[], receivedAt: Date): Promise<void> {
  for (const [index, movement] of movements.entries()) {
    const { movementId: id, itemId, kind, takenAt } = movement
    const body = canonicalJson(movement)
    if (await isKnown(write, by.siteId, id, body)) continue
    refuseFuture(takenAt, index, receivedAt)
    await itemOf(write, by.siteId, itemId)
    const own = { id, siteId: by.siteId, itemId, kind, body, takenAt: new Date(takenAt), receivedAt, personId: by.personId }
    await write.stockMovement.create({ data: { ...own, ...(await restOf(write, by.siteId, movement, receivedAt)) } })
  }
}

async function isKnown(write: Write, siteId: string, id: string, body: string): Promise<boolean> {
  const known = await write.stockMovement.findUnique({ where: { id }, select: { siteId: true, body: true } })
  if (known && (known.siteId !== siteId || known.body !== body)) throw new Refusal('stock/id-reused', id)
  return known !== null
}

function refuseFuture(takenAt: string, index: number, now: Date): void {
  if (Date.parse(takenAt) <= now.getTime() + FARTHEST_AHEAD_MILLISECONDS) return
  const pointer = `#/movements/${index}/takenAt`
  throw new Refusal('event/in-the-future', takenAt, [{ pointer, detail: `${takenAt} has not come yet` }])
}

/** The columns that only some kinds have, once all they name was found. */
async function restOf(write: Write, siteId: string, movement: StockMovement, now: Date) {
  switch (movement.kind) {
    case 'ordered':
      return { amount: movement.amount, expectedOn: movement.expectedOn }
    case 'received': {
      const { itemId, lotId, label, batch, expiresOn, orderId, amount } = movement
      const corrects = orderId === null ? null : await orderFor(write, siteId, itemId, orderId)
      const id = await newLotId(write, lotId)
      await write.stockLot.create({ data: { id, siteId, itemId, label, batch, expiresOn, createdAt: now } })
      return { amount, lotId, corrects }
    }
    case 'issued': {
      const { amount } = movement
      const lotId = await lotFor(write, siteId, movement)
      return { amount, lotId, ...(await placeFor(write, siteId, movement)) }
    }
    case 'returned':
    case 'counted':
      return { amount: movement.amount, lotId: await lotFor(write, siteId, movement) }
    case 'taken back':
      return { amount: 0, corrects: await movementToTakeBack(write, siteId, movement) }
  }
}
