import { MILLIMETRES_PER_INCH } from '@glandkeeper/units/convert'

/** What a gap is read in: a rule in millimetres, or one in sixteenths of an inch. The record has millimetres. */
export const gapUnits = ['mm', '1/16 in'] as const
export type GapUnit = (typeof gapUnits)[number]

/** What turns of a nut are counted in: a hexagon has six flats. The record has turns. */
export const turnUnits = ['flats', 'quarter turns'] as const
export type TurnUnit = (typeof turnUnits)[number]

const MILLIMETRES_IN: Readonly<Record<GapUnit, number>> = { mm: 1, '1/16 in': MILLIMETRES_PER_INCH / 16 }
const IN_A_TURN: Readonly<Record<TurnUnit, number>> = { flats: 6, 'quarter turns': 4 }

/** Binary fractions leave dust far below anything that is measured: 3 sixteenths are 4.7625 mm. */
const withoutDust = (value: number) => Number(value.toFixed(6))

/** @example millimetresOf(5, '1/16 in') // → 7.9375 */
export function millimetresOf(typed: number | null, unit: GapUnit): number | null {
  return typed === null ? null : withoutDust(typed * MILLIMETRES_IN[unit])
}

/** @example gapTyped(7.9375, '1/16 in') // → 5 */
export function gapTyped(millimetres: number | null, unit: GapUnit): number | null {
  return millimetres === null ? null : withoutDust(millimetres / MILLIMETRES_IN[unit])
}

/** A sixth of a turn is kept as exactly as a figure can be: its travel is counted from it. @example turnsOf(3, 'flats') // → 0.5 */
export function turnsOf(typed: number, unit: TurnUnit): number {
  return typed / IN_A_TURN[unit]
}

/** @example turnsTyped(0.5, 'flats') // → 3 */
export function turnsTyped(turns: number, unit: TurnUnit): number {
  return withoutDust(turns * IN_A_TURN[unit])
}
