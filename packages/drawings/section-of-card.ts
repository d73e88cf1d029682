import { type Drawing, lettering, line, path, type Point, type Shape } from './drawing.ts'
import { dimensionShapes } from './section-figures.ts'
import { placementOf, proportionsOf, type Placement, shapesOf } from './section-geometry.ts'
import type { Dimension } from './section-labels.ts'
import type { DrawnGland, Measure } from './section-model.ts'
import { bodyShapes, stemShapes, studShapes } from './section-parts.ts'

const FIGURE = 15
const TRACK = 14

/**
 * The same box on a card: only bore, stem, depth and the gap expected when the set is loaded, drawn at `width` px.
 * What is not measured gets a blank to write on.
 */
export function sectionOfCard(gland: DrawnGland, size: { readonly width: number; readonly mostHeight: number }): Drawing {
  const place = placementOf(gland, { ...size, leftGutter: 8, gutter: 66 })
  const parts = { gland, place, shapes: shapesOf(gland, place) }
  return {
    width: size.width,
    height: place.height,
    says: inWords(gland),
    shapes: [...bodyShapes(parts), ...studShapes(parts), ...stemShapes(parts), ...figures(gland, place)],
  }
}

const isGapUnknown = (gland: DrawnGland) => gland.assumed.has('gap left') || gland.assumed.has('gap right')

function inWords(gland: DrawnGland): string {
  const said = (measure: Measure, value: number) =>
    `${measure} ${gland.assumed.has(measure) ? 'not measured' : `${Number(value.toFixed(1))} mm`}`
  const gap = isGapUnknown(gland) ? 'gap when loaded not known' : `gap when loaded ${gland.gapLeft.toFixed(1)} mm`
  return ['bore', 'stem', 'depth'].reduce(
    (words, measure) => `${words}, ${said(measure as Measure, gland[measure as 'bore' | 'stem' | 'depth'])}`,
    `Section of the stuffing box: ${gap}`,
  )
}

function figures(gland: DrawnGland, place: Placement): Shape[] {
  const part = proportionsOf(gland)
  const right = place.x(part.flangeHalf) + TRACK
  const upright = (y0: number, y1: number, from: number, isGuess: boolean): Dimension => ({
    name: 'upright',
    from: [right, place.y(y0)],
    to: [right, place.y(y1)],
    extensions: [y0, y1].map(
      (y) =>
        [
          [place.x(from), place.y(y)],
          [right + 4, place.y(y)],
        ] as const,
    ),
    isGuess,
  })
  const beside = (y0: number, y1: number): Point => [right + 8, place.y((y0 + y1) / 2) + 5]
  const bottom = place.y(gland.depth + part.floor + part.medium)
  return [
    ...dimensionShapes(upright(-gland.gapLeft, 0, part.flangeHalf, true)),
    ...dimensionShapes(upright(0, gland.depth, part.boxHalf, gland.assumed.has('depth'))),
    ...figure(isGapUnknown(gland) ? null : gland.gapLeft.toFixed(1), beside(-gland.gapLeft, 0), 'start', true),
    ...figure(known(gland, 'depth', gland.depth), beside(0, gland.depth), 'start'),
    ...figure(known(gland, 'stem', gland.stem, '⌀ '), [place.x(0), place.y(-part.top) - 16], 'middle'),
    ...boreShapes(gland, place, bottom + 20),
    ...figure(known(gland, 'bore', gland.bore, '⌀ '), [place.x(gland.bore / 2) + 8, bottom + 25], 'start'),
  ]
}

function known(gland: DrawnGland, measure: Measure, value: number, before = ''): string | null {
  return gland.assumed.has(measure) ? null : `${before}${Number(value.toFixed(1))}`
}

/** The bore is marked from outside at both ends, so that its figure has room. */
function boreShapes(gland: DrawnGland, place: Placement, y: number): Shape[] {
  const ends = [-1, 1].map((side) => ({ side, x: place.x((side * gland.bore) / 2) }))
  return [
    path(ends.map(({ x }) => line([x, place.y(gland.depth)], [x, y + 5])).join(''), 'hair'),
    path(line([ends[0]?.x ?? 0, y], [ends[1]?.x ?? 0, y]), 'dim', gland.assumed.has('bore')),
  ]
}

/** A figure, or a line to write it on. */
function figure(says: string | null, at: Point, anchor: 'start' | 'middle', isBold = false): Shape[] {
  if (says !== null) return [lettering(says, at, { anchor, size: FIGURE, isBold })]
  const from = anchor === 'start' ? at[0] : at[0] - 20
  return [path(line([from, at[1] + 1], [from + 40, at[1] + 1]), 'thin')]
}
