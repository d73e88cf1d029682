import { lettering, line, outline, path, type Shape } from './drawing.ts'
import { type Outline, type Placement, proportionsOf, type SectionShapes } from './section-geometry.ts'
import { type DrawnGland, isToScale, type Measure } from './section-model.ts'

interface Parts {
  readonly gland: DrawnGland
  readonly place: Placement
  readonly shapes: SectionShapes
}

const followerMeasures: readonly Measure[] = ['nose', 'gap left', 'gap right']
const RING_NUMBER = 15

/** Box, rings and follower: what is cut through, hatched. */
export function bodyShapes({ gland, shapes }: Parts): Shape[] {
  const followerIsGuessed = gland.gapIsInferred || followerMeasures.some((measure) => gland.assumed.has(measure))
  const boxIsGuessed = !isToScale(gland)
  return [
    ...shapes.medium.map((part) => path(outline(part), 'medium')),
    ...shapes.walls.map((part) => path(outline(part), 'steel out', boxIsGuessed)),
    ...ringShapes(shapes.rings, !gland.assumed.has('rings')),
    ...shapes.bush.map((part) => path(outline(part), 'steel2 out', followerIsGuessed)),
    ...shapes.bridge.map((part) => path(outline(part), 'steel out', followerIsGuessed)),
  ]
}

function ringShapes(rings: SectionShapes['rings'], areCounted: boolean): Shape[] {
  return rings.flatMap(({ left, right }, index) => {
    const [inner, outer, , top] = left
    if (!inner || !outer || !top) return []
    const tall = inner[1] - top[1]
    const fits = tall > 15 && inner[0] - outer[0] > 13
    const paint = tall > 6 ? 'pack out' : 'pack thin'
    const middle = [(inner[0] + outer[0]) / 2, (inner[1] + top[1]) / 2 + 5] as const
    return [
      path(outline(left), paint),
      path(outline(right), paint),
      ...(areCounted && fits ? [lettering(String(index + 1), middle, { size: RING_NUMBER, on: 'pack' })] : []),
    ]
  })
}

/** The line the follower's underside may not pass, at both sides of the box. */
export function keepClearShape({ gland, place }: Parts): Shape {
  const half = proportionsOf(gland).flangeHalf
  const y = place.y(-gland.keepClear)
  const sides = [-1, 1].map((side) => line([place.x(side * half) + side * 6, y], [place.x((side * gland.bore) / 2), y]))
  return path(sides.join(''), 'hotline', true)
}

/** Studs and nuts are not cut through, so never hatched. */
export function studShapes({ gland, place, shapes }: Parts): Shape[] {
  const isGuessed = gland.assumed.has('stud thread')
  return shapes.studs.flatMap((stud, index) => {
    const [from, , to] = stud
    const nut = shapes.nuts[index]
    if (!from || !to || !nut) return []
    const axis = (from[0] + to[0]) / 2
    const root = (to[0] - from[0]) * 0.08
    const upright = (x: number, [y0, y1]: readonly [number, number]) => line([x, y0], [x, y1])
    const length = [from[1], to[1]] as const
    return [
      path(outline(stud), 'paperfill out', isGuessed),
      path(upright(from[0] + root, length) + upright(to[0] - root, length), 'hair'),
      path(outline(nut), 'plain out', isGuessed),
      ...facetShapes(nut, axis, (gland.studDiameter * place.k) / 3),
      path(upright(axis, [from[1] - 10, to[1] + 10]), 'centre'),
    ]
  })
}

function facetShapes([from, , to]: Outline, axis: number, facet: number): Shape[] {
  if (!from || !to) return []
  return [path([-facet, facet].map((off) => line([axis + off, from[1]], [axis + off, to[1]])).join(''), 'thin')]
}

/** The stem, broken off at both ends. */
export function stemShapes({ gland, place, shapes }: Parts): Shape[] {
  const { left, right, top, bottom } = shapes.stem
  const wide = right - left
  const bow = Math.min(wide / 8, 14)
  const broken = (y: number) => `M${left} ${y}q${wide / 4} ${bow} ${wide / 2} 0t${wide / 2} 0`
  return [
    path(`${broken(top)}V${bottom}q${-wide / 4} ${-bow} ${-wide / 2} 0t${-wide / 2} 0Z`, 'paperfill'),
    path(line([left, top], [left, bottom]) + line([right, top], [right, bottom]), 'out', gland.assumed.has('stem')),
    path(`${broken(top)}${broken(bottom)}`, 'thin'),
    path(line([place.x(0), top - 10], [place.x(0), bottom + 12]), 'centre'),
  ]
}
