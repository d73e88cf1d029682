import type { Shape } from './drawing.ts'
import { dimensionShapes } from './section-figures.ts'

/** A height beside a part: a dimension line at `x`, with hair lines from the part's edge at `from`. Px. */
export function uprightDimension(x: number, y0: number, y1: number, from: number, isGuess = false): Shape[] {
  const past = x + (x < from ? -4 : 4)
  return dimensionShapes({
    name: 'upright',
    from: [x, y0],
    to: [x, y1],
    extensions: [y0, y1].map((y) => [[from, y] as const, [past, y] as const] as const),
    isGuess,
  })
}
