import type { StockItem, StockLot } from '@glandkeeper/contract/stores'
import { formatAmount } from '../stores/queries.ts'
import type { Reel } from './reel.ts'

/** What the packing is for, as far as it is known. */
export interface WantedPacking {
  readonly family: string | null
  readonly section: number | null
  readonly boxBore: number | null
  readonly stemDiameter: number | null
  /** Of one ring at mid-width, mm. */
  readonly ringLength: number | null
}

export interface ReelChoice extends Reel {
  /** As printed on it, for the entry. */
  readonly batch: string
  readonly packing: Pick<WantedPacking, 'family' | 'section'>
}

export interface ReelChoices {
  /** Reels that this gland can be packed from, by what the store says of them. */
  readonly fitting: readonly ReelChoice[]
  readonly others: readonly ReelChoice[]
}

/** Cord that is rolled down, or a drawing that was rounded: nearer than this it is the same section. */
const SAME_SECTION_MM = 0.5
const SAME_SIZE_MM = 0.2
const MM_IN_M = 1000

/** Every reel of cord and box of rings that has something left and is not expired. */
export function reelChoices(items: readonly StockItem[], wanted: WantedPacking): ReelChoices {
  const packing = items.filter(({ kind }) => kind === 'cord' || kind === 'die-formed ring')
  const choicesOf = (isFitting: boolean) =>
    packing
      .filter((item) => fits(item, wanted) === isFitting)
      .flatMap((item) => item.lots.filter(isUsable).map((lot) => choiceOf(item, lot, wanted)))
  return { fitting: choicesOf(true), others: choicesOf(false) }
}

function isUsable({ amount, isExpired }: StockLot): boolean {
  return amount > 0 && !isExpired
}

function fits(item: StockItem, { family, section, boxBore, stemDiameter }: WantedPacking): boolean {
  if (family !== null && family !== 'unknown' && item.family !== family) return false
  const isNear = (size: number | null, other: number | null, within: number) =>
    size !== null && other !== null && Math.abs(size - other) <= within
  if (item.kind === 'cord') return isNear(item.section, section, SAME_SECTION_MM)
  return isNear(item.boxBore, boxBore, SAME_SIZE_MM) && isNear(item.stemDiameter, stemDiameter, SAME_SIZE_MM)
}

function choiceOf(item: StockItem, lot: StockLot, { ringLength }: WantedPacking): ReelChoice {
  const perCut = ringLength === null ? null : ringLength / MM_IN_M
  return {
    lotId: lot.lotId,
    batch: lot.batch,
    packing: { family: item.family, section: item.section },
    says: `${lot.label} · ${formatAmount(lot.amount, item.unit)} · ${item.name}`,
    unit: item.unit,
    perRing: item.unit === 'm' ? perCut : 1,
  }
}
