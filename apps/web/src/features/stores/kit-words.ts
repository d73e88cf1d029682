import type { KitLine } from '@glandkeeper/contract/kits'
import { counted } from '../../ui/count.ts'
import { formatMetres } from './amount-words.ts'
import type { ReelToCut } from './queries.ts'

/** Less than this no knife can cut. */
const NOT_SEEN_MM = 1
const percent = (share: number) => `${(share * 100).toFixed(1)}\u00a0%`

/**
 * Waste of the cutting plan against the least there can be. As in '0.42 m wasted, 4.2 % of what is cut into. No cutting
 * wastes less than 0.39 m.'
 */
export function wasteInWords({ waste, reels }: Pick<KitLine, 'waste' | 'reels'>): string | null {
  if (waste === null || reels.length === 0) return null
  if (waste.wasted < NOT_SEEN_MM) return 'Nothing is wasted.'
  const said = `${formatMetres(waste.wasted)} wasted, ${percent(waste.share)}.`
  if (waste.wasted - waste.bound < NOT_SEEN_MM) return `${said} No cutting wastes less.`
  return `${said} ${waste.bound > 0 ? `No cutting wastes less than ${formatMetres(waste.bound)}.` : 'Whether another wastes less is not known.'}`
}

/** How a line stands where nothing of it is short: that is told by itself. */
export function lineStands({ short }: Pick<KitLine, 'short'>, stillToGo: number): string | null {
  if (short.length > 0) return null
  return stillToGo > 0 ? 'in the store' : 'issued'
}

/** What becomes of the end of a reel. */
export function endInWords({ left, isScrap }: Pick<ReelToCut, 'left' | 'isScrap'>): string {
  if (left < 1) return 'used up'
  return isScrap ? `${formatMetres(left)} left: scrap` : `${formatMetres(left)} left: goes back`
}

/** A drawn reel for those who cannot see it. */
export function reelInWords({ label, length, pieces, left, isScrap }: ReelToCut): string {
  const count = pieces.reduce((sum, piece) => sum + piece.count, 0)
  const tags = [...new Set(pieces.map(({ tag }) => tag))]
  const named = tags.length > 4 ? `${tags.slice(0, 4).join(', ')} and ${tags.length - 4} more` : tags.join(', ')
  return `${label}, ${formatMetres(length)}: ${counted(count, 'piece')} for ${named}; ${endInWords({ left, isScrap })}`
}
