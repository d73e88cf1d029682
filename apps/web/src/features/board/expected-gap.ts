import type { BoardRow } from '@glandkeeper/contract/board'
import { leastGap } from '../../ui/gauge-geometry.ts'

interface ExpectedGap {
  /** From the box face, mm. */
  readonly gap: number
  /** Likelier than not the travel is used up by then. */
  readonly isUsedUp: boolean
}

type Figures = Pick<BoardRow, 'gapLeft' | 'gapRight' | 'reserve' | 'runsOutOn' | 'chanceBeforeStop'>

/**
 * Where the follower is drawn as expected on the day of the stop: on a line from the reserve of today to none on the
 * middle day of the forecast. For the drawing only: the forecast is an interval.
 */
export function expectedGapAt(row: Figures, stopOn: string, today: string): ExpectedGap | null {
  const gap = leastGap(row)
  if (gap === null || row.reserve === null || row.reserve <= 0 || row.chanceBeforeStop === null) return null
  const gapAtNone = gap - row.reserve
  if (row.runsOutOn === null) return { gap, isUsedUp: false }
  if (row.runsOutOn <= stopOn) return { gap: gapAtNone, isUsedUp: true }
  const share = shareOf(Date.parse(stopOn), Date.parse(today), Date.parse(row.runsOutOn))
  return { gap: gap - row.reserve * share, isUsedUp: false }
}

/** How much of the way from `start` to `end` is gone, from 0 to 1. */
function shareOf(moment: number, start: number, end: number): number {
  return end > start ? Math.min(Math.max((moment - start) / (end - start), 0), 1) : 1
}
