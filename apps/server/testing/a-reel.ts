import type { BodyIn } from '@glandkeeper/contract/endpoint'
import { addStockItem, listStock, moveStock, type StockItem } from '@glandkeeper/contract/stores'
import { newId } from '../src/platform/ids.ts'
import type { TestServer } from './a-server.ts'

type ItemBody = BodyIn<typeof addStockItem>
type Movement = BodyIn<typeof moveStock>['movements'][number]
type About<Kind extends Movement['kind']> = Omit<
  Extract<Movement, { kind: Kind }>,
  'kind' | 'movementId' | 'takenAt' | 'note'
> & {
  movementId?: string
  takenAt?: string
  note?: string
}

export const cord: ItemBody = {
  kind: 'cord',
  name: 'Graphite braid 8 mm',
  family: 'graphite braid',
  section: 8,
  boxBore: null,
  stemDiameter: null,
  thread: null,
  length: null,
  leadTimeDays: 21,
  leastStock: 4,
  packSize: 8,
}

export const pressedRings: ItemBody = {
  ...cord,
  kind: 'die-formed ring',
  name: 'Pressed rings 28 in 44',
  family: 'graphite die-formed',
  section: null,
  boxBore: 44,
  stemDiameter: 28,
  packSize: 10,
}

/** A movement at eight in the morning of the first of May 2026, unless it says when. */
export const aMovement = <Kind extends Movement['kind']>(kind: Kind, about: About<Kind>): Movement =>
  ({ movementId: newId(), takenAt: '2026-05-01T08:00:00Z', note: '', ...about, kind }) as unknown as Movement

export const received = (itemId: string, amount: number, about: Partial<About<'received'>> = {}) =>
  aMovement('received', { itemId, lotId: newId(), label: 'R-1', batch: 'B-1', amount, expiresOn: null, orderId: null, ...about })

export const anItem = async (server: TestServer, body: Partial<ItemBody> = {}): Promise<string> =>
  (await server.expectOk('planner', addStockItem, { body: { ...cord, ...body } })).itemId

export const move = (server: TestServer, ...movements: Movement[]) =>
  server.expectOk('fitter', moveStock, { body: { movements } })

/** An item with one reel of so many metres. */
export async function aReel(server: TestServer, amount: number, about: Partial<About<'received'>> = {}) {
  const itemId = await anItem(server)
  const lotId = newId()
  await move(server, received(itemId, amount, { lotId, ...about }))
  return { itemId, lotId }
}

export async function stockItem(server: TestServer, itemId: string): Promise<StockItem> {
  const { items } = await server.expectOk('fitter', listStock)
  const item = items.find((one) => one.itemId === itemId)
  if (!item) throw new Error(`no item ${itemId}`)
  return item
}
