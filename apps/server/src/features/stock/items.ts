import type { StockItemInput } from '@glandkeeper/contract/stores'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Read, Write } from '../../platform/store.ts'
import { presentInput } from './present.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

/** The row of an item of the site's store. @throws stock/unknown */
export async function itemOf(read: Pick<Read, 'stockItem'>, siteId: string, itemId: string) {
  const item = await read.stockItem.findFirst({ where: { id: itemId, siteId } })
  if (!item) throw new Refusal('stock/unknown', itemId)
  return item
}

/** Adds an item with nothing in it yet; its name must be free. The same cord may come from two suppliers: two items. */
export async function createItem(write: Write, by: By, item: StockItemInput, now: Date): Promise<string> {
  await refuseTakenName(write, by.siteId, item.name)
  const id = newId()
  await write.stockItem.create({ data: { id, siteId: by.siteId, ...rowOf(item), createdAt: now } })
  const note = { subject: 'stock item', subjectId: id, what: 'stock item added', before: {}, after: item } as const
  await noteChange(write, by, note, now)
  return id
}

/** Changes an item that nobody else has changed since `revision`. */
export async function changeItem(
  write: Write,
  by: By,
  itemId: string,
  { revision, item }: { readonly revision: number; readonly item: StockItemInput },
  now: Date,
): Promise<void> {
  const before = await itemOf(write, by.siteId, itemId)
  if (before.revision !== revision)
    throw new Refusal('stock/changed-meanwhile', `you changed revision ${revision}, the store has ${before.revision}`)
  await refuseTakenName(write, by.siteId, item.name, itemId)
  await refuseOtherKind(write, before, item)
  await write.stockItem.update({ where: { id: itemId }, data: { ...rowOf(item), revision: revision + 1 } })
  const note = {
    subject: 'stock item',
    subjectId: itemId,
    what: 'stock item changed',
    before: presentInput(before),
    after: item,
  } as const
  await noteChange(write, by, note, now)
}

/** Two names that differ in capitals only are one name to a person. */
async function refuseTakenName(write: Write, siteId: string, name: string, except?: string): Promise<void> {
  const rows = await write.stockItem.findMany({ where: { siteId }, select: { id: true, name: true } })
  const folded = name.toLowerCase()
  if (rows.some((row) => row.id !== except && row.name.toLowerCase() === folded)) throw new Refusal('stock/name-taken', name)
}

/** Metres of cord cannot become pieces of something else. */
async function refuseOtherKind(write: Write, before: { id: string; kind: string }, { kind }: StockItemInput): Promise<void> {
  if (kind === before.kind || (await write.stockMovement.count({ where: { itemId: before.id } })) === 0) return
  const detail = `there was ${before.kind} in it already: add another item`
  throw new Refusal('request/invalid', detail, [{ pointer: '#/item/kind', detail }])
}

function rowOf({ section, boxBore, stemDiameter, length, ...item }: StockItemInput) {
  return { ...item, sectionMm: section, boxBoreMm: boxBore, stemDiameterMm: stemDiameter, lengthMm: length }
}
