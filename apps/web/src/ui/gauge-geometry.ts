/** Along the stem 3 px are 1 mm and the box face is at x = 54, in every gauge, so that a column of them reads as a chart. */
export const FACE_X = 54
const PX_PER_MM = 3
const BOX_END_X = 4
const MOST_SHOWN_MM = 18

export interface GaugeFigures {
  gapLeft: number | null
  gapRight: number | null
  gapIsInferred: boolean
  keepClear: number
  noseLength: number | null
}

interface GaugeGeometry {
  /** Left edge of the follower flange; null where no gap is known. */
  blockX: number | null
  /** Where the nose ends and the packing begins; null where gap or nose length is not known. */
  packingTopX: number | null
  /** The gap is longer than the drawing: the block stands at its end, with a break mark. */
  isBroken: boolean
  keepClearX: number
}

export const xAt = (mm: number) => FACE_X + PX_PER_MM * mm
export const mostShownX = xAt(MOST_SHOWN_MM)

/** The side that runs out first stands for both. */
export function leastGap({ gapLeft, gapRight }: Pick<GaugeFigures, 'gapLeft' | 'gapRight'>): number | null {
  const known = [gapLeft, gapRight].filter((gap) => gap !== null)
  return known.length === 0 ? null : Math.min(...known)
}

export function gaugeGeometry(figures: GaugeFigures): GaugeGeometry {
  const gap = leastGap(figures)
  const { noseLength } = figures
  return {
    blockX: gap === null ? null : xAt(Math.min(gap, MOST_SHOWN_MM)),
    packingTopX: gap === null || noseLength === null ? null : Math.min(Math.max(xAt(gap - noseLength), BOX_END_X), FACE_X),
    isBroken: gap !== null && gap > MOST_SHOWN_MM,
    keepClearX: xAt(Math.min(figures.keepClear, MOST_SHOWN_MM)),
  }
}

/** What the drawing shows, for those who do not see it. */
export function gaugeInWords(figures: GaugeFigures): string {
  const { gapLeft, gapRight, gapIsInferred, keepClear } = figures
  const clear = `keep clear ${keepClear.toFixed(1)} mm`
  const sides = [
    gapLeft !== null && `left ${gapLeft.toFixed(1)} mm`,
    gapRight !== null && `right ${gapRight.toFixed(1)} mm`,
  ].filter(Boolean)
  if (sides.length === 0) return `Gap not known, ${clear}`
  return `Gap ${sides.join(', ')}, ${gapIsInferred ? 'worked out from turns' : 'measured'}, ${clear}`
}
