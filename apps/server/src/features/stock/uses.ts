import type { FieldEvent } from '@glandkeeper/contract/events'
import type { Finding } from '@glandkeeper/contract/reserve'
import type { SignedIn } from '../../platform/auth.ts'
import { canonicalJson } from '../../platform/chain.ts'
import { idOfParts } from '../../platform/ids.ts'
import type { Write } from '../../platform/store.ts'
import { storeFinding } from '../glands/index.ts'
import { amountInWords } from './amount-in-words.ts'
import { asMoved, unitOf } from './present.ts'
import { stockAsMoved } from './stock-as-moved.ts'
import { takenBackOf } from './taken-back-of.ts'
import { type EntryAsItStands, entriesConcerned } from './entries-concerned.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>
type Findings = Map<string, Finding[]>

/**
 * Books what entries took from the store themselves, in the transaction that keeps them: of each entry as it stands by
 * its corrections, in whatever order they arrive. What a correction took the place of is taken back. No entry is
 * refused: a lot nobody knows and one that goes below nought are findings.
 *
 * @param events accepted just now, and kept already
 * @returns what stood out, by the entry it arrived with
 */
export async function useStockOfEvents(write: Write, by: By, events: readonly FieldEvent[], receivedAt: Date): Promise<Findings> {
  const findings: Findings = new Map()
  for (const entry of await entriesConcerned(write, by.siteId, events)) {
    await takeBackOthers(write, by, entry, receivedAt)
    findings.set(entry.arrivedWith, await bookUses(write, by, entry, receivedAt))
  }
  return findings
}

/** Uses booked for the entry, or for a correction of it that no longer holds. */
async function takeBackOthers(
  write: Write,
  by: By,
  { spokenBy, others, spokenAt }: EntryAsItStands,
  receivedAt: Date,
): Promise<void> {
  if (others.length === 0) return
  const { siteId, personId } = by
  const used = await write.stockMovement.findMany({ where: { siteId, eventId: { in: [...others] }, kind: 'used' } })
  const isBack = await takenBackOf(
    write,
    siteId,
    used.map(({ id }) => id),
  )
  await write.stockMovement.createMany({
    data: used
      .filter(({ id }) => !isBack.has(id))
      .map(({ id, itemId, valveId }) => ({
        id: idOfParts([id, 'taken back']),
        siteId,
        itemId,
        kind: 'taken back',
        amount: 0,
        corrects: id,
        takenAt: spokenAt,
        receivedAt,
        personId,
        valveId,
        eventId: spokenBy,
        body: canonicalJson({ corrects: id }),
      })),
  })
}

async function bookUses(write: Write, by: By, entry: EntryAsItStands, receivedAt: Date): Promise<Finding[]> {
  const { siteId, personId } = by
  const { spokenBy: eventId, valveId, takenAt, fromStore } = entry
  const lots = await write.stockLot.findMany({ where: { siteId, id: { in: fromStore.map(({ lotId }) => lotId) } } })
  const itemIds = new Map(lots.map((lot) => [lot.id, lot.itemId]))
  const rows = fromStore.flatMap(({ lotId, amount }, line) => {
    const itemId = itemIds.get(lotId)
    const id = idOfParts([eventId, 'from store', String(line)])
    if (itemId === undefined) return []
    const body = canonicalJson({ lotId, amount })
    return [{ id, siteId, itemId, lotId, kind: 'used', amount, takenAt, receivedAt, personId, valveId, eventId, body }]
  })
  const known = await write.stockMovement.findMany({ where: { id: { in: rows.map(({ id }) => id) } }, select: { id: true } })
  await write.stockMovement.createMany({ data: rows.filter(({ id }) => !known.some((row) => row.id === id)) })
  const unknown = fromStore.some(({ lotId }) => !itemIds.has(lotId)) ? [storeFinding({ code: 'stock/lot-unknown' })] : []
  return [...unknown, ...(await belowNought(write, siteId, rows))]
}

interface Use {
  readonly itemId: string
  readonly lotId: string
  readonly amount: number
}

/** Lots of which the books now have less than nothing. */
async function belowNought(write: Write, siteId: string, uses: readonly Use[]): Promise<Finding[]> {
  const findings: Finding[] = []
  for (const itemId of new Set(uses.map((use) => use.itemId))) {
    const { kind } = await write.stockItem.findUniqueOrThrow({ where: { id: itemId }, select: { kind: true } })
    const { lots } = stockAsMoved(await write.stockMovement.findMany({ where: { siteId, itemId }, select: asMoved }))
    const ofItem = uses.filter((use) => use.itemId === itemId)
    for (const lotId of new Set(ofItem.map((use) => use.lotId))) {
      const now = lots.get(lotId) ?? 0
      const before = ofItem.reduce((sum, use) => sum + (use.lotId === lotId ? use.amount : 0), now)
      const left = amountInWords(Math.max(0, before), unitOf(kind))
      if (now < 0) findings.push(storeFinding({ code: 'stock/below-nought', left }))
    }
  }
  return findings
}
