import type { StockItem } from '@glandkeeper/contract/stores'
import type { PackingNeed } from './packing-need.ts'

/** A store writes 7.9 mm, or 7.94, for a cord of 5/16 inch. */
const ALIKE_MM = 0.05
/** Binary fractions must not part 6.35 from 6.4. */
const DUST = 1e-9

type Fitting = Pick<StockItem, 'kind' | 'family' | 'section' | 'boxBore' | 'stemDiameter' | 'onHand'>

/** The item that serves a need: of several that do the first with stock, else the first; null where the store has none. */
export function itemForNeed<Item extends Fitting>(items: readonly Item[], need: PackingNeed): Item | null {
  const serving = items.filter((item) => item.kind === need.kind && item.family === need.family && isAlike(item, need))
  return serving.find(({ onHand }) => onHand > 0) ?? serving[0] ?? null
}

function isAlike({ section, boxBore, stemDiameter }: Fitting, need: PackingNeed): boolean {
  if (need.kind === 'cord') return isSame(section, need.sectionMm)
  return isSame(boxBore, need.boxBoreMm) && isSame(stemDiameter, need.stemDiameterMm)
}

function isSame(size: number | null, wanted: number): boolean {
  return size !== null && Math.abs(size - wanted) <= ALIKE_MM + DUST
}
