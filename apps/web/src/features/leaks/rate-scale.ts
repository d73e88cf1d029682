import { scaleLinear } from '@visx/scale'

interface Rate {
  readonly leaks: number
  readonly rate: number | null
  readonly upper: number | null
}

/** A group with fewer leaks has limits so wide that a scale for them would press all others together. */
const ENOUGH_LEAKS = 3
const MOST_BEYOND = 2.5

/** The top of one scale for all rows: what they reach with their limits, but no further than the rates allow. */
export function topOfRates(rows: readonly Rate[]): number {
  const told = rows.filter(({ leaks }) => leaks >= ENOUGH_LEAKS)
  const of = told.length > 0 ? told : rows
  const most = Math.max(0, ...of.map(({ rate }) => rate ?? 0))
  const reach = Math.max(0, ...of.map(({ rate, upper }) => upper ?? rate ?? 0))
  return Math.min(reach, most > 0 ? most * MOST_BEYOND : reach) || 1
}

interface RateMark {
  readonly dot: number
  readonly from: number
  readonly to: number
  /** The rate, or a limit, lies beyond the end of the scale. */
  readonly isBeyond: boolean
}

const EDGE = 5

/** Where dot and limits lie on a scale of this width, kept inside it; null where there is no rate. */
export function rateMark(
  { rate, lower, upper }: { readonly rate: number | null; readonly lower: number | null; readonly upper: number | null },
  top: number,
  width: number,
): RateMark | null {
  if (rate === null) return null
  const x = rateScale(top, width)
  return { dot: x(rate), from: x(lower ?? rate), to: x(upper ?? rate), isBeyond: Math.max(rate, upper ?? rate) > top }
}

/** From zero. */
export function rateScale(top: number, width: number) {
  return scaleLinear<number>({ domain: [0, top], range: [EDGE, width - EDGE], clamp: true })
}
