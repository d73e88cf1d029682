import { lettering, line, path, type Point, type Shape } from './drawing.ts'
import { type Dimension, heightOf, type Label, type Line } from './section-labels.ts'

const LEAST_FOR_INSIDE_ARROWS = 26
const OUTSIDE_ARROW = 16

/** A dimension line with its extensions; a short one gets its arrows from outside. */
export function dimensionShapes({ from, to, extensions, isGuess }: Dimension): Shape[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  return [
    path(extensions.map(([a, b]) => line(a, b)).join(''), 'hair'),
    ...(length >= LEAST_FOR_INSIDE_ARROWS ? [path(line(from, to), 'dim', isGuess)] : shortDimension(from, to, isGuess)),
  ]
}

function shortDimension(from: Point, to: Point, isGuess: boolean): Shape[] {
  const isUpright = Math.abs(to[0] - from[0]) < 0.5
  const [low, high] = (isUpright ? from[1] <= to[1] : from[0] <= to[0]) ? [from, to] : [to, from]
  const away = ([x, y]: Point, px: number): Point => (isUpright ? [x, y + px] : [x + px, y])
  return [
    path(line(from, to), 'thin', isGuess),
    path(line(away(low, -OUTSIDE_ARROW), low), 'dim end'),
    path(line(away(high, OUTSIDE_ARROW), high), 'dim end'),
  ]
}

/** `plainSize` is the lettering of an ordinary figure: less on a phone. */
export function labelShapes({ at, anchor, lines, leader, isHot }: Label, plainSize: number): Shape[] {
  return [
    ...leader.slice(1).map((to, index) => path(line(leader[index] ?? to, to), isHot ? 'hothair' : 'hair')),
    ...lines.map(({ text, tone, isGuess = false }, index) =>
      lettering(text, [at[0], at[1] + heightOf(lines.slice(0, index + 1)) - 4], {
        anchor,
        ...voice(tone, plainSize),
        ...(isGuess && { isDashed: true }),
      }),
    ),
  ]
}

function voice(tone: Line['tone'], plainSize: number) {
  if (tone === 'figure') return { size: 21, isBold: true }
  if (tone === 'plain') return { size: plainSize }
  return { size: 13, paint: tone }
}
