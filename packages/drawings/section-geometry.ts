import type { Point } from './drawing.ts'
import { type DrawnGland } from './section-model.ts'

export type Outline = readonly Point[]

/** The room the drawing may take, in px; gutters hold the figures at both sides. */
export interface Room {
  readonly width: number
  readonly mostHeight: number
  readonly gutter: number
  /** Where the left side needs less. */
  readonly leftGutter?: number
}

/** Where a millimetre lies: x from the stem axis, y from the box face, growing into the box. */
export interface Placement {
  readonly k: number
  readonly x: (mm: number) => number
  readonly y: (mm: number) => number
}

/** What nobody records is drawn in proportion to what is: in mm, half widths from the axis. */
interface Proportions {
  readonly studAt: number
  readonly boxHalf: number
  readonly flangeHalf: number
  readonly collarHalf: number
  readonly collar: number
  readonly flange: number
  readonly nutHalf: number
  readonly nutHeight: number
  readonly studOver: number
  readonly studInto: number
  readonly floor: number
  readonly medium: number
  readonly top: number
}

export interface SectionShapes {
  readonly walls: readonly Outline[]
  readonly medium: readonly Outline[]
  readonly rings: readonly { readonly left: Outline; readonly right: Outline }[]
  readonly bush: readonly Outline[]
  readonly bridge: readonly Outline[]
  readonly studs: readonly Outline[]
  readonly nuts: readonly Outline[]
  readonly stem: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number }
}

const TOP_MARGIN = 40
const BOTTOM_MARGIN = 44
const MOST_PX_PER_MM = 12

const clamp = (value: number, low: number, high: number) => Math.min(Math.max(value, low), high)

export function proportionsOf(gland: DrawnGland): Proportions {
  const radius = gland.bore / 2
  const d = gland.studDiameter
  const clear = Math.max(gland.bore * 0.15, 3)
  const studAt = radius + clear + d / 2
  const flange = clamp(gland.bore * 0.2, 5, 22)
  const collar = gland.isTwoPiece ? clamp(gland.bore * 0.13, 3, 12) : 0
  const nutHeight = d * 0.85
  const studOver = d * 0.6
  return {
    studAt,
    boxHalf: studAt + d,
    flangeHalf: studAt + d * 1.15,
    collarHalf: radius + clear * 0.6,
    collar,
    flange,
    nutHalf: d * 0.82,
    nutHeight,
    studOver,
    studInto: Math.min(d * 1.8, gland.depth * 0.6),
    floor: clamp(gland.depth * 0.15, 3, 18),
    medium: clamp(gland.depth * 0.07, 2, 8),
    top: Math.max(gland.gapLeft, gland.gapRight) + collar + flange + nutHeight + studOver + gland.bore * 0.12,
  }
}

/** One scale for both directions, the largest that fits. */
export function placementOf(gland: DrawnGland, room: Room): Placement & { readonly height: number } {
  const part = proportionsOf(gland)
  const tall = part.top + gland.depth + part.floor + part.medium
  const wide = 2 * part.flangeHalf
  const left = room.leftGutter ?? room.gutter
  const free = room.width - left - room.gutter
  const k = Math.min(free / wide, (room.mostHeight - TOP_MARGIN - BOTTOM_MARGIN) / tall, MOST_PX_PER_MM)
  const axis = left + free / 2
  const face = TOP_MARGIN + part.top * k
  return { k, x: (mm) => axis + mm * k, y: (mm) => face + mm * k, height: TOP_MARGIN + tall * k + BOTTOM_MARGIN }
}

/** Height of the follower's underside at `x`: it leans so that both sides stand at their measured gap. */
export function undersideAt(gland: DrawnGland, x: number): number {
  const middle = (gland.gapLeft + gland.gapRight) / 2
  return -(middle + ((gland.gapRight - gland.gapLeft) / 2) * (x / proportionsOf(gland).flangeHalf))
}

/** Where the nose ends and the packing begins, at `x`: never above the box face nor below its floor. */
export function packingTopAt(gland: DrawnGland, x: number): number {
  return clamp(undersideAt(gland, x) + gland.nose, 0, gland.depth)
}

export function shapesOf(gland: DrawnGland, place: Placement): SectionShapes {
  const part = proportionsOf(gland)
  const box = (x0: number, y0: number, x1: number, y1: number): Outline =>
    outlined(place, [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ])
  const bothSides = (x0: number, y0: number, x1: number, y1: number) => [box(-x1, y0, -x0, y1), box(x0, y0, x1, y1)]
  const radius = gland.bore / 2
  const stem = gland.stem / 2
  const bottom = gland.depth + part.floor
  return {
    walls: [
      ...bothSides(radius, 0, part.boxHalf, gland.depth),
      ...bothSides(stem + running(gland), gland.depth, part.boxHalf, bottom),
    ],
    medium: bothSides(stem, bottom, part.boxHalf, bottom + part.medium),
    rings: ringsOf(gland, place),
    bush: [-1, 1].map((side) => outlined(place, bushOf(gland, part, side))),
    bridge: gland.isTwoPiece ? [-1, 1].map((side) => outlined(place, bridgeOf(gland, part, side))) : [],
    studs: [-1, 1].map((side) => {
      const at = side * part.studAt
      const seat = followerTopAt(gland, part, at)
      return box(at - gland.studDiameter / 2, seat - part.nutHeight - part.studOver, at + gland.studDiameter / 2, part.studInto)
    }),
    nuts: [-1, 1].map((side) => {
      const at = side * part.studAt
      const seat = followerTopAt(gland, part, at)
      return box(at - part.nutHalf, seat - part.nutHeight, at + part.nutHalf, seat)
    }),
    stem: { left: place.x(-stem), right: place.x(stem), top: place.y(-part.top), bottom: place.y(bottom + part.medium) },
  }
}

/** The follower's own clearances, so that two outlines do not fall on each other. */
function running(gland: DrawnGland): number {
  return (gland.bore - gland.stem) * 0.02
}

export function followerTopAt(gland: DrawnGland, part: Proportions, x: number): number {
  return undersideAt(gland, x) - part.collar - part.flange
}

function bushOf(gland: DrawnGland, part: Proportions, side: number): Outline {
  const inner = gland.stem / 2 + running(gland)
  const nose = gland.bore / 2 - running(gland)
  const outer = gland.isTwoPiece ? part.collarHalf : part.flangeHalf
  const thick = gland.isTwoPiece ? part.collar : part.flange
  const under = (x: number): number => undersideAt(gland, side * x)
  const noseEnd = (x: number): number => Math.min(under(x) + gland.nose, gland.depth)
  return [
    [side * inner, noseEnd(inner)],
    [side * nose, noseEnd(nose)],
    [side * nose, under(nose)],
    [side * outer, under(outer)],
    [side * outer, under(outer) - thick],
    [side * inner, under(inner) - thick],
  ]
}

function bridgeOf(gland: DrawnGland, part: Proportions, side: number): Outline {
  const inner = gland.stem / 2 + running(gland) * 3
  const under = (x: number): number => undersideAt(gland, side * x) - part.collar
  return [
    [side * inner, under(inner)],
    [side * part.flangeHalf, under(part.flangeHalf)],
    [side * part.flangeHalf, under(part.flangeHalf) - part.flange],
    [side * inner, under(inner) - part.flange],
  ]
}

/** Rings from the bottom up, all of one height, the top one leaning with the nose. */
function ringsOf(gland: DrawnGland, place: Placement): SectionShapes['rings'] {
  const count = Math.max(Math.round(gland.rings), 0)
  const level = (x: number, ring: number) => gland.depth - (gland.depth - packingTopAt(gland, x)) * (ring / count)
  const ringAt = (ring: number, inner: number, outer: number): Outline =>
    outlined(place, [
      [inner, level(inner, ring)],
      [outer, level(outer, ring)],
      [outer, level(outer, ring + 1)],
      [inner, level(inner, ring + 1)],
    ])
  return Array.from({ length: count }, (_, ring) => ({
    left: ringAt(ring, -gland.stem / 2, -gland.bore / 2),
    right: ringAt(ring, gland.stem / 2, gland.bore / 2),
  }))
}

function outlined(place: Placement, points: readonly Point[]): Outline {
  return points.map(([x, y]) => [place.x(x), place.y(y)] as const)
}
