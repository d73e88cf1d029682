import type { StockMovementShown } from '@glandkeeper/contract/stores'
import type { Read } from '../../platform/store.ts'
import { itemOf } from './items.ts'
import { movementInWords, type MovementToTell } from './movement-in-words.ts'
import { asMoved, unitOf } from './present.ts'
import { byTimeThenId, stockAsMoved } from './stock-as-moved.ts'

const MOST_SHOWN = 1000

const inFull = {
  ...asMoved,
  body: true,
  person: { select: { name: true } },
  lot: { select: { label: true, batch: true, expiresOn: true } },
  valve: { select: { tag: true } },
  outage: { select: { name: true } },
} as const

/** The last thousand movements of an item, the newest first, each with what it did to the stock. */
export async function movementsShown(read: Read, siteId: string, itemId: string): Promise<StockMovementShown[]> {
  const { kind } = await itemOf(read, siteId, itemId)
  const rows = await read.stockMovement.findMany({ where: { siteId, itemId }, select: inFull })
  const { changes, takenBack } = stockAsMoved(rows)
  const byId = new Map(rows.map((row) => [row.id, row]))
  return rows
    .toSorted((one, other) => byTimeThenId(other, one))
    .slice(0, MOST_SHOWN)
    .map((row) => {
      const corrected = row.kind === 'taken back' && row.corrects !== null ? byId.get(row.corrects) : undefined
      return {
        movementId: row.id,
        kind: row.kind as StockMovementShown['kind'],
        takenAt: row.takenAt.toISOString(),
        receivedAt: row.receivedAt.toISOString(),
        by: row.person.name,
        label: (row.lot ?? corrected?.lot)?.label ?? '',
        change: (changes.get(row.id) ?? 0) as StockMovementShown['change'],
        says: movementInWords(toTell(row, corrected ? toTell(corrected, null) : null), unitOf(kind)),
        isTakenBack: takenBack.has(row.id),
      }
    })
}

interface Told extends Pick<MovementToTell, 'kind' | 'amount' | 'expectedOn' | 'lot'> {
  readonly body: string
  readonly valve: { readonly tag: string } | null
  readonly outage: { readonly name: string } | null
}

function toTell({ kind, amount, expectedOn, lot, body, valve, outage }: Told, takesBack: MovementToTell | null): MovementToTell {
  const { note } = JSON.parse(body) as { note?: string }
  return { kind, amount, expectedOn, lot, tag: valve?.tag ?? null, outageName: outage?.name ?? null, takesBack, note: note ?? '' }
}
