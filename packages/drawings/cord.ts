import { type Degree, type Millimetre } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, outline, path, type Point, type Shape } from './drawing.ts'

export interface CordToDraw {
  /** Length of the ring at the middle of the cord. */
  readonly ringLength: Millimetre
  readonly section: Millimetre
  /** Angle between the cut and the cord's axis; 90 is a butt cut. */
  readonly cutAngle: Degree
  /** Widest the drawing may be, in its own unit. */
  readonly room: number
  /** Units of the drawing for a millimetre of cord. Paper: 1, and the cord is drawn at full size. */
  readonly perMillimetre: number
  /** Also the lengths a rule finds between the corners, for who measures there. */
  readonly isWithCorners?: boolean
}

const SIDE = 12
const ABOVE = 22
const BELOW = 34
const BREAK = 10
const CORNER_ROW = 30

/**
 * One ring as it lies on the table, both ends cut the same way, with its length at mid-width and the cut's angle.
 * Longer than the room, it is drawn broken: ends and section to scale, the length written.
 *
 * @example cordDrawing({ ringLength: mm(100), section: mm(8), cutAngle: degrees(90), room: 300, perMillimetre: 2 }).width // → 224
 */
export function cordDrawing({ ringLength, section, cutAngle, room, perMillimetre, isWithCorners = false }: CordToDraw): Drawing {
  const tall = section * perMillimetre
  const lean = cutAngle === 90 ? 0 : tall / Math.tan((cutAngle * Math.PI) / 180)
  const whole = ringLength * perMillimetre
  const isBroken = whole + lean + 2 * SIDE > room
  const shown = isBroken ? Math.max(room - lean - 2 * SIDE, 6 * BREAK) : whole
  const [left, right, top, bottom] = [SIDE + lean / 2, SIDE + lean / 2 + shown, ABOVE, ABOVE + tall]
  const middle = (top + bottom) / 2
  const width = shown + lean + 2 * SIDE
  const corners = isWithCorners && lean > 0 ? cornersOf(ringLength, section / Math.tan((cutAngle * Math.PI) / 180)) : []
  return {
    width,
    height: bottom + BELOW + corners.length * CORNER_ROW,
    says: `One ring of ${section.toFixed(1)} mm cord, ${ringLength.toFixed(1)} mm at mid-width, both ends cut at ${cutAngle} degrees the same way${isBroken ? ', drawn broken' : ''}${corners.map(({ length, says }) => `, ${length.toFixed(1)} mm ${says}`).join('')}`,
    shapes: [
      ...(isBroken ? brokenCord(left, right, top, bottom, lean) : [cordBetween(left, right, top, bottom, lean)]),
      path(line([left - lean / 2 - 6, middle], [right + lean / 2 + 6, middle]), 'centre'),
      ...angleMark([left - lean / 2, bottom], tall, cutAngle),
      lettering(
        cutAngle === 90 ? 'butt, both ends square' : `skive ${cutAngle}°, both ends the same way`,
        [left - lean / 2 + (lean > 0 ? lean : 0), ABOVE - 8],
        {
          anchor: 'start',
        },
      ),
      lettering(`${section.toFixed(1)} square`, [right + lean / 2, ABOVE - 8], { anchor: 'end' }),
      ...lengthBelow(left, right, middle, bottom, ringLength),
      ...corners.flatMap(({ length, out, says }, row) =>
        cornerLength(left - (out * lean) / 2, right + (out * lean) / 2, bottom, row, `${length.toFixed(1)} mm ${says}`),
      ),
    ],
  }
}

function cordBetween(left: number, right: number, top: number, bottom: number, lean: number): Shape {
  const half = lean / 2
  return path(
    outline([
      [left - half, bottom],
      [left + half, top],
      [right + half, top],
      [right - half, bottom],
    ]),
    'pack out',
  )
}

/** Two ends with a gap between, each with a broken edge. */
function brokenCord(left: number, right: number, top: number, bottom: number, lean: number): Shape[] {
  const half = lean / 2
  const at = (left + right) / 2
  const middle = (top + bottom) / 2
  const zigzag = (x: number): Point[] => [
    [x, top],
    [x + BREAK / 2, middle - BREAK / 4],
    [x - BREAK / 2, middle + BREAK / 4],
    [x, bottom],
  ]
  return [
    path(outline([[left - half, bottom], [left + half, top], ...zigzag(at - BREAK)]), 'pack out'),
    path(outline([...zigzag(at + BREAK), [right - half, bottom], [right + half, top]]), 'pack out'),
  ]
}

function angleMark([x, y]: Point, tall: number, angle: Degree): Shape[] {
  const radius = Math.min(tall * 0.6, 18)
  const turned = (angle * Math.PI) / 180
  return [
    path(
      `M${x + radius} ${y}A${radius} ${radius} 0 0 0 ${x + radius * Math.cos(turned)} ${y - radius * Math.sin(turned)}`,
      'hotline',
    ),
  ]
}

/** The length runs between the middles of the two cuts: that is where it is measured. */
function lengthBelow(left: number, right: number, middle: number, bottom: number, length: Millimetre): Shape[] {
  const y = bottom + 14
  return [
    path(line([left, middle], [left, y + 4]), 'hair'),
    path(line([right, middle], [right, y + 4]), 'hair'),
    path(line([left, y], [right, y]), 'dim'),
    lettering(`${length.toFixed(1)} mm`, [(left + right) / 2, y + 16], { isBold: true, size: 16 }),
  ]
}

/** Both points stand out by half a lean, both inner corners stand in by as much; a very flat cut has none. */
function cornersOf(ringLength: number, lean: number) {
  return [
    { length: ringLength + lean, out: 1, says: 'from point to point' },
    { length: ringLength - lean, out: -1, says: 'between the inner corners' },
  ].filter(({ length }) => length > 0)
}

function cornerLength(from: number, to: number, bottom: number, row: number, says: string): Shape[] {
  const y = bottom + BELOW + row * CORNER_ROW + 10
  return [
    path(line([from, bottom], [from, y + 4]) + line([to, bottom], [to, y + 4]), 'hair'),
    path(line([from, y], [to, y]), 'dim'),
    lettering(says, [(from + to) / 2, y + 15]),
  ]
}
