import { formatMillimetres } from '@glandkeeper/units/format'
import type { Millimetre } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, outline, path, type Shape } from './drawing.ts'

export interface SectionFitToDraw {
  readonly boxBore: Millimetre
  readonly stemDiameter: Millimetre
  readonly sections: readonly { readonly designation: string; readonly size: Millimetre }[]
  readonly room: number
}

const TALL = 120
const WALL = 26
const ABOVE = 24
const BELOW = 26
const APART = 56
const MOST_PX_PER_MM = 14

/**
 * Each section on offer as a square in the space between stem and wall, all to one scale: what stands over the
 * space shows at once, and so does the gap.
 */
export function sectionFitDrawing({ boxBore, stemDiameter, sections, room }: SectionFitToDraw): Drawing {
  const space = (boxBore - stemDiameter) / 2
  const largest = Math.max(space, ...sections.map(({ size }) => size))
  const each = (room - 2 * APART) / Math.max(sections.length, 1) - 2 * WALL - 20
  const scale = Math.min(MOST_PX_PER_MM, (TALL - 16) / largest, Math.max(each, 40) / largest)
  const wide = 2 * WALL + space * scale
  const shapes = sections.flatMap((section, index) => oneFit(section, space, scale, 10 + index * (wide + APART)))
  return {
    width: Math.min(room, 10 + sections.length * (wide + APART)),
    height: ABOVE + TALL + BELOW,
    says: `Space of ${formatMillimetres(space, 2)} between stem and box; ${sections.map(({ designation }) => designation).join(' and ')} drawn in it to scale`,
    shapes,
  }
}

function oneFit({ designation, size }: { designation: string; size: number }, space: number, scale: number, x: number): Shape[] {
  const [stemSide, wallSide] = [x + WALL, x + WALL + space * scale]
  const [top, bottom] = [ABOVE, ABOVE + TALL]
  const side = size * scale
  const middle = (top + bottom) / 2
  // It lies against the stem, so what is over or short shows at the wall.
  const square = outline([
    [stemSide, middle - side / 2],
    [stemSide + side, middle - side / 2],
    [stemSide + side, middle + side / 2],
    [stemSide, middle + side / 2],
  ])
  return [
    path(
      outline([
        [x, top],
        [stemSide, top],
        [stemSide, bottom],
        [x, bottom],
      ]),
      'paperfill out',
    ),
    path(
      outline([
        [wallSide, top],
        [wallSide + WALL, top],
        [wallSide + WALL, bottom],
        [wallSide, bottom],
      ]),
      'steel out',
    ),
    path(square, 'pack out'),
    ...(side > space * scale ? [path(line([wallSide, middle - side / 2], [wallSide, middle + side / 2]), 'hotline')] : []),
    lettering(designation, [(stemSide + wallSide) / 2, ABOVE - 9], { isBold: true }),
    lettering('stem', [x + WALL / 2, bottom + 16], { paint: 'soft' }),
    lettering('box', [wallSide + WALL / 2, bottom + 16], { paint: 'soft' }),
  ]
}
