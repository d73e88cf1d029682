import { Refusal } from '../../platform/problem.ts'
import type { Write } from '../../platform/store.ts'
import { takenBackOf } from './taken-back-of.ts'

/** A lot of the item. @throws stock/unknown where there is none, or it is another item's */
export async function lotFor(
  write: Write,
  siteId: string,
  named: { readonly lotId: string; readonly itemId: string },
): Promise<string> {
  const lot = await write.stockLot.findFirst({ where: { id: named.lotId, siteId, itemId: named.itemId }, select: { id: true } })
  if (!lot) throw new Refusal('stock/unknown', named.lotId)
  return lot.id
}

/** An id that names no lot yet: what was received twice has two movements and two lots. */
export async function newLotId(write: Write, lotId: string): Promise<string> {
  if (await write.stockLot.findUnique({ where: { id: lotId }, select: { id: true } })) throw new Refusal('stock/id-reused', lotId)
  return lotId
}

/** An order of the item, whatever became of it: a second delivery may come of one. @throws stock/unknown */
export async function orderFor(write: Write, siteId: string, itemId: string, orderId: string): Promise<string> {
  const order = await write.stockMovement.findFirst({
    where: { id: orderId, siteId, itemId, kind: 'ordered' },
    select: { id: true },
  })
  if (!order) throw new Refusal('stock/unknown', orderId)
  return order.id
}

/** Whom it is issued for. @throws valve/unknown, outage/unknown */
export async function placeFor(
  write: Write,
  siteId: string,
  { tag, outageId }: { readonly tag: string | null; readonly outageId: string | null },
): Promise<{ valveId: string | null; outageId: string | null }> {
  const valve =
    tag === null ? null : await write.valve.findUnique({ where: { siteId_tag: { siteId, tag } }, select: { id: true } })
  if (tag !== null && !valve) throw new Refusal('valve/unknown', tag)
  if (outageId !== null && !(await write.outage.findFirst({ where: { id: outageId, siteId }, select: { id: true } })))
    throw new Refusal('outage/unknown', outageId)
  return { valveId: valve?.id ?? null, outageId }
}

/** A movement of the item that stands, by hand. @throws stock/not-to-take-back with the reason */
export async function movementToTakeBack(
  write: Write,
  siteId: string,
  { itemId, corrects }: { readonly itemId: string; readonly corrects: string },
): Promise<string> {
  const movement = await write.stockMovement.findFirst({ where: { id: corrects, siteId, itemId }, select: { kind: true } })
  if (!movement) throw new Refusal('stock/not-to-take-back', 'it is no movement of this item')
  if (movement.kind === 'used') throw new Refusal('stock/not-to-take-back', 'an entry from the field used it: correct the entry')
  if (movement.kind === 'taken back')
    throw new Refusal('stock/not-to-take-back', 'what was taken back stays so: put the movement down again')
  if ((await takenBackOf(write, siteId, [corrects])).has(corrects))
    throw new Refusal('stock/not-to-take-back', 'it is taken back already')
  return corrects
}
