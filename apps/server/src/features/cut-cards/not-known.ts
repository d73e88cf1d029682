import type { CutCard } from '@glandkeeper/contract/cut-cards'

export type CardFigures = Pick<CutCard, 'form' | 'gland' | 'cord' | 'rings' | 'cut'>

/** Why it cannot be said what packing a repack takes; null where it can. */
export function notKnownOf({ gland, form, cord, rings, cut }: CardFigures): string | null {
  if (gland.boxBore === null || gland.stemDiameter === null) return 'bore or stem not measured'
  if (form === null) return 'packing not known'
  if (gland.boxDepth === null || gland.noseLength === null) return 'box depth or nose not measured'
  if (cord === null || rings === null || (form === 'braided' && cut === null)) return 'its figures do not go together'
  return null
}
