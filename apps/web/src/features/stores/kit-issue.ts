import type { StockItem } from '@glandkeeper/contract/stores'
import type { Kit, KitLine } from '@glandkeeper/contract/kits'
import type { KitAsked, MovementInput, ReelToCut } from './queries.ts'

type Issued = Extract<MovementInput, { kind: 'issued' }>

/** One reel or box that something is taken from, before it is a movement with an id and a time. */
export interface LotToIssue extends Pick<Issued, 'itemId' | 'lotId' | 'amount' | 'tag' | 'outageId'> {
  readonly name: string
  readonly label: string
  readonly unit: KitLine['unit']
}

const MM_IN_M = 1000
const SAME_LENGTH_MM = 1
const ROUNDING_DUST = 1e-6

/** Never less than the piece: an issued end that is too short would be cut from the store once more. */
const toMillimetreAbove = (millimetres: number) => Math.ceil(millimetres - ROUNDING_DUST) / MM_IN_M

/**
 * What goes out of the store for a kit. Of a reel: all that is cut off, with an end that is scrap. Of boxes: what is
 * still to be issued, from the box that expires first. For a round each valve has its own movement, since a round is
 * nobody the store books to.
 */
export function lotsToIssue({ lines }: Pick<Kit, 'lines'>, items: readonly StockItem[], asked: KitAsked): LotToIssue[] {
  const whom = { tag: asked.tag ?? null, outageId: asked.outageId ?? null }
  return lines.flatMap((line) => {
    const { itemId } = line
    if (itemId === null) return []
    const common = { itemId, name: line.name, unit: line.unit }
    if (line.kind !== 'cord') return fromBoxes(line, items).map((box) => ({ ...common, ...whom, ...box }))
    return reelsInStore(line, items)
      .flatMap((reel) => (asked.roundId === undefined ? [{ reel, amount: cutOff(reel), whom }] : byValve(reel)))
      .map(({ reel: { lotId, label }, amount, whom: valve }) => ({ ...common, ...valve, lotId, label, amount }))
  })
}

/** How much of a line has not gone out: of cord what is to be cut from reels of the store, of pieces the rest. */
export function stillToGo(line: KitLine, items: readonly StockItem[]): number {
  if (line.kind !== 'cord') return Math.max(0, line.needed - line.issued)
  return reelsInStore(line, items).reduce((sum, reel) => sum + cutOff(reel), 0)
}

/**
 * Reels of a cutting plan that are in the store. What was handed out before is cut first: it is then not as long as the
 * books have the reel, or the reel comes again further down with what is left of it.
 */
function reelsInStore({ reels }: Pick<KitLine, 'reels'>, items: readonly StockItem[]): ReelToCut[] {
  const onBooks = new Map(items.flatMap(({ lots }) => lots.map(({ lotId, amount }) => [lotId, amount * MM_IN_M])))
  return reels.filter(({ lotId, length }, index) => {
    const isLastOfIt = !reels.slice(index + 1).some((other) => other.lotId === lotId)
    return isLastOfIt && Math.abs((onBooks.get(lotId) ?? 0) - length) <= SAME_LENGTH_MM
  })
}

function cutOff({ length, left, isScrap }: ReelToCut): number {
  return toMillimetreAbove(isScrap ? length : length - left)
}

/** The last valve bears what trims and a scrap end come to, so that the sum is what leaves the reel. */
function byValve(reel: ReelToCut) {
  const lengths = new Map<string, number>()
  for (const { tag, length, count } of reel.pieces) lengths.set(tag, (lengths.get(tag) ?? 0) + length * count)
  let rest = cutOff(reel)
  return [...lengths].map(([tag, length], index, all) => {
    const amount = index === all.length - 1 ? toMillimetreAbove(rest * MM_IN_M) : toMillimetreAbove(length)
    rest -= amount
    return { reel, amount, whom: { tag, outageId: null } }
  })
}

function fromBoxes(line: KitLine, items: readonly StockItem[]) {
  const lots = items.find(({ itemId }) => itemId === line.itemId)?.lots ?? []
  const inOrder = lots
    .filter(({ amount, isExpired }) => amount > 0 && !isExpired)
    .toSorted((a, b) => ((a.expiresOn ?? '9999') < (b.expiresOn ?? '9999') ? -1 : 1))
  let open = stillToGo(line, items)
  return inOrder.flatMap(({ lotId, label, amount }) => {
    const taken = Math.min(open, amount)
    open -= taken
    return taken > 0 ? [{ lotId, label, amount: taken }] : []
  })
}

/** The movements of an issue; each with an id of its own, so that one sent twice is one. */
export function issuedMovements(
  lots: readonly LotToIssue[],
  stamp: { takenAt: string; newId: () => string; note: string },
): Issued[] {
  return lots.map(({ itemId, lotId, amount, tag, outageId }) => ({
    movementId: stamp.newId(),
    kind: 'issued',
    itemId,
    lotId,
    amount,
    tag,
    outageId,
    takenAt: stamp.takenAt,
    note: stamp.note,
  }))
}
