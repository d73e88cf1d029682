import type { Read } from '../../platform/store.ts'
import { takenBackOf } from '../stock/index.ts'
import type { KitValve } from './valves-of-kit.ts'

/** Something the store has handed out for this work: a length of its own, or some pieces. */
export interface Issued {
  readonly movementId: string
  readonly itemId: string
  readonly amount: number
  readonly lot: { readonly lotId: string; readonly label: string; readonly batch: string }
  readonly valveId: string | null
  readonly outageId: string | null
}

interface IssuedFor {
  readonly valves: readonly Pick<KitValve, 'valveId' | 'packedAt'>[]
  readonly outageIds: readonly string[]
}

/**
 * What was issued for outages, or for valves since they were last packed: what was issued for a valve before that went
 * into the packing that is in it now. The oldest first; what was taken back is left out.
 */
export async function issuedFor(
  read: Pick<Read, 'stockMovement'>,
  siteId: string,
  { valves, outageIds }: IssuedFor,
): Promise<Issued[]> {
  const packedAt = new Map(valves.map((valve) => [valve.valveId, valve.packedAt]))
  const rows = await read.stockMovement.findMany({
    where: {
      siteId,
      kind: 'issued',
      OR: [{ valveId: { in: [...packedAt.keys()] } }, { outageId: { in: [...outageIds] } }],
    },
    orderBy: [{ takenAt: 'asc' }, { id: 'asc' }],
    select: { id: true, itemId: true, amount: true, takenAt: true, valveId: true, outageId: true, lot: true },
  })
  const isBack = await takenBackOf(
    read,
    siteId,
    rows.map(({ id }) => id),
  )
  return rows.flatMap(({ id, itemId, amount, takenAt, lot, ...place }): Issued[] => {
    const packed = place.valveId === null ? null : (packedAt.get(place.valveId) ?? null)
    const isForOutage = place.outageId !== null && outageIds.includes(place.outageId)
    const isForValve = place.valveId !== null && packedAt.has(place.valveId) && (packed === null || takenAt > packed)
    if (lot === null || isBack.has(id) || !(isForOutage || isForValve)) return []
    return [{ movementId: id, itemId, amount, lot: { lotId: lot.id, label: lot.label, batch: lot.batch }, ...place }]
  })
}
