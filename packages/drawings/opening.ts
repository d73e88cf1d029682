import { formatFigure } from '@glandkeeper/units/figure'
import type { Millimetre } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, path, type Shape } from './drawing.ts'

/** CSS takes an inch for 96 px; screens keep to it more or less, so a bar shows what a screen makes of it. */
const PX_PER_MILLIMETRE = 96 / 25.4
const WIDEST_TRUE = 120
const WIDEST_ENLARGED = 84
const ENLARGEMENTS = [1000, 500, 200, 100, 50, 20, 10, 5, 2] as const
const REDUCTIONS = [2, 5, 10] as const
/** Lengths of a bar, in mm. */
const BARS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100] as const
const LEAST_BAR = 34
const PLACE = 150
const TOP = 8

/** The hole at its true size beside a bar, and so many times enlarged where it would be a dot. */
export function openingDrawing({ opening, room }: { readonly opening: Millimetre; readonly room: number }): Drawing {
  const truly = opening * PX_PER_MILLIMETRE
  const reduction = truly <= WIDEST_TRUE ? 1 : (REDUCTIONS.find((times) => truly / times <= WIDEST_TRUE) ?? 10)
  const enlargement = ENLARGEMENTS.find((times) => truly * times <= WIDEST_ENLARGED) ?? null
  const place = Math.min(PLACE, (room - 4) / 2)
  const tall = Math.max(truly / reduction, enlargement === null ? 0 : truly * enlargement, 24)
  const at = (index: number) => ({ middle: 2 + place * (index + 0.5), centre: TOP + tall / 2, foot: TOP + tall + 16 })
  const first = reduction === 1 ? 'true size' : `${reduction} times smaller`
  return {
    width: 4 + place * (enlargement === null ? 1 : 2),
    height: TOP + tall + 56,
    says: `Opening of ${formatFigure(opening, 'mm', 1)} as a round hole, drawn ${first === 'true size' ? 'at true size' : first}${enlargement === null ? '' : `, and ${enlargement} times larger`}`,
    shapes: [
      ...hole({ ...at(0), opening, scale: PX_PER_MILLIMETRE / reduction, says: first }),
      ...(enlargement === null
        ? []
        : hole({ ...at(1), opening, scale: PX_PER_MILLIMETRE * enlargement, says: `${enlargement} times larger` })),
    ],
  }
}

function hole(of: {
  readonly opening: number
  /** Px for a millimetre. */
  readonly scale: number
  readonly middle: number
  readonly centre: number
  readonly foot: number
  readonly says: string
}): Shape[] {
  const { opening, scale, middle, centre, foot, says } = of
  const length = BARS.find((mm) => mm * scale >= LEAST_BAR) ?? 100
  const half = (length * scale) / 2
  const [from, to] = [middle - half, middle + half]
  return [
    path(circle(middle, centre, (opening * scale) / 2), 'hotfill'),
    path(
      line([from, foot], [to, foot]) + line([from, foot - 4], [from, foot + 4]) + line([to, foot - 4], [to, foot + 4]),
      'thin',
    ),
    lettering(`${length}\u00a0mm`, [middle, foot + 16]),
    lettering(says, [middle, foot + 32], { paint: 'soft' }),
  ]
}

function circle(x: number, y: number, radius: number): string {
  const r = Math.round(radius * 1000) / 1000
  return `M${x - r} ${y}A${r} ${r} 0 0 1 ${x + r} ${y}A${r} ${r} 0 0 1 ${x - r} ${y}Z`
}
