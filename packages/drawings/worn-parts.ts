import { formatMillimetres } from '@glandkeeper/units/format'
import type { Millimetre } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, outline, path, type Point, rectangle, type Shape } from './drawing.ts'

export interface WornPartsToDraw {
  readonly stemDiameters: readonly Millimetre[]
  readonly boreDiameters: readonly Millimetre[]
  readonly stemAsNew: Millimetre | null
  readonly boreAsNew: Millimetre | null
  /** Hole in the follower. */
  readonly followerBore: Millimetre | null
  /** Hole at the bottom of the box. */
  readonly neckBore: Millimetre | null
  readonly room: number
}

const MOST_PX_PER_MM = 16
const WIDEST_SPACE = 150
const STEM = 62
const WALL = 34
const LABELS = 118
const TOP = 8
const HOLE = 46
const BOX = 132
const MOST_FIGURES = 6

/** One side of the box, across to scale: every measured diameter is a step of the edge, so wear and slits show as they are. */
export function wornPartsDrawing(parts: WornPartsToDraw): Drawing {
  const { stemDiameters, boreDiameters, stemAsNew, boreAsNew, followerBore, neckBore, room } = parts
  const thinnest = Math.min(...stemDiameters)
  const widest = Math.max(...boreDiameters)
  const space = Math.min(WIDEST_SPACE, room - STEM - WALL - LABELS - 4)
  const scale = Math.min(MOST_PX_PER_MM, (2 * space) / (widest - thinnest))
  const x = (diameter: number): number => 2 + STEM + ((diameter - thinnest) / 2) * scale
  const outer = x(widest) + WALL
  const [box, neck, bottom] = [TOP + HOLE, TOP + HOLE + BOX, TOP + 2 * HOLE + BOX]
  const bore = steps(boreDiameters, x, box, neck)
  const stem: Point[] = [
    [x(thinnest), TOP],
    [x(thinnest), box],
    ...steps(stemDiameters, x, box, neck),
    [x(thinnest), neck],
    [x(thinnest), bottom],
  ]
  const collar = (hole: number | null, from: number, to: number): Shape[] =>
    hole === null || x(hole) >= outer ? [] : [path(rectangle([x(hole), from], [outer, to]), 'steel2 out')]
  return {
    width: outer + LABELS,
    height: bottom + 42,
    says: inWords(parts),
    shapes: [
      path(outline([...bore, [outer, neck], [outer, box]]), 'steel out'),
      ...collar(followerBore, TOP, box - 2),
      ...collar(neckBore, neck, bottom),
      path(outline([[2, TOP], ...stem, [2, bottom]]), 'paperfill out'),
      ...asNew(stemAsNew, x, outer, box, neck),
      ...asNew(boreAsNew, x, outer, box, neck),
      ...stepFigures(stemDiameters, [x(thinnest) - 8, box]),
      ...spaceFigures((x(thinnest) + x(widest)) / 2, box + BOX / 2, stemDiameters, boreDiameters),
      ...beside(outer + 10, TOP + 18, 'follower', followerBore, thinnest),
      ...boreFigures(outer + 10, box + BOX / 2 - 6, boreDiameters),
      ...beside(outer + 10, neck + 18, 'bottom', neckBore, thinnest),
      lettering(`stem ${range(stemDiameters)}`, [2, bottom + 18], { anchor: 'start' }),
      lettering(`across to scale, heights are not${(stemAsNew ?? boreAsNew) ? '; dashed: as new' : ''}`, [2, bottom + 36], {
        anchor: 'start',
        paint: 'soft',
      }),
    ],
  }
}

/** An edge that stands at each measured diameter in turn. */
function steps(diameters: readonly number[], x: (diameter: number) => number, from: number, to: number): Point[] {
  const each = (to - from) / diameters.length
  return diameters.flatMap((diameter, index): Point[] => [
    [x(diameter), from + index * each],
    [x(diameter), from + (index + 1) * each],
  ])
}

function asNew(diameter: number | null, x: (diameter: number) => number, outer: number, from: number, to: number): Shape[] {
  if (diameter === null || x(diameter) < 2 || x(diameter) > outer) return []
  return [path(line([x(diameter), from], [x(diameter), to]), 'ghost')]
}

/** More figures than there is room for stay unwritten: least and most stand below. */
function stepFigures(diameters: readonly number[], [right, top]: Point): Shape[] {
  if (diameters.length > MOST_FIGURES) return []
  const each = BOX / diameters.length
  return diameters.map((diameter, index) =>
    lettering(figure(diameter), [right, top + (index + 0.5) * each + 4], { anchor: 'end' }),
  )
}

function spaceFigures(x: number, y: number, stems: readonly number[], bores: readonly number[]): Shape[] {
  const least = (Math.min(...bores) - Math.max(...stems)) / 2
  const most = (Math.max(...bores) - Math.min(...stems)) / 2
  return [
    lettering('space', [x, y - 4], { paint: 'soft' }),
    lettering(least === most ? figure(least) : `${figure(least)} to ${figure(most)}`, [x, y + 12]),
  ]
}

function boreFigures(x: number, y: number, diameters: readonly number[]): Shape[] {
  return [
    lettering('bore', [x, y], { anchor: 'start', paint: 'soft' }),
    lettering(range(diameters), [x, y + 16], { anchor: 'start' }),
  ]
}

function beside(x: number, y: number, what: string, hole: number | null, thinnest: number): Shape[] {
  if (hole === null) return [lettering(`${what} not measured`, [x, y], { anchor: 'start', paint: 'soft' })]
  return [
    lettering(`${what} ⌀ ${figure(hole)}`, [x, y], { anchor: 'start', paint: 'soft' }),
    lettering(`slit ${formatMillimetres((hole - thinnest) / 2, 2)}`, [x, y + 16], { anchor: 'start', isBold: true }),
  ]
}

const figure = (diameter: number): string => String(Number(diameter.toFixed(2)))

function range(diameters: readonly number[]): string {
  const [least, most] = [Math.min(...diameters), Math.max(...diameters)]
  return least === most ? `⌀ ${figure(least)}` : `⌀ ${figure(least)} to ${figure(most)}`
}

function inWords({ stemDiameters, boreDiameters, followerBore, neckBore }: WornPartsToDraw): string {
  const thinnest = Math.min(...stemDiameters)
  const slit = (what: string, hole: number | null) =>
    hole === null ? [] : [`slit ${what} ${formatMillimetres((hole - thinnest) / 2, 2)} on each side`]
  return [
    `One side of the box, across to scale: stem ${range(stemDiameters)}`,
    `bore ${range(boreDiameters)}`,
    ...slit('in the follower', followerBore),
    ...slit('at the bottom', neckBore),
  ].join(', ')
}
