/**
 * A finite number that carries its unit in the type only: no cost at run time.
 * Engines compute in one set throughout: mm, turns, days, °C, bar.
 */
declare const unit: unique symbol
export type Quantity<Unit extends string> = number & { readonly [unit]: Unit }

export type Millimetre = Quantity<'mm'>
export type Turn = Quantity<'turn'>
export type Day = Quantity<'day'>
/** Milliseconds since 1970-01-01T00:00Z: a moment, not a duration. */
export type Instant = Quantity<'instant'>

const constructorOf =
  <Unit extends string>(unitName: Unit) =>
  (value: number): Quantity<Unit> => {
    if (!Number.isFinite(value)) throw new RangeError(`a quantity in ${unitName} must be finite, got ${value}`)
    return value as Quantity<Unit>
  }

/** `mm(8.5)` is 8.5 millimetres. Throws RangeError for NaN and the infinities. */
export const mm = constructorOf('mm')
/** `turns(0.5)` is half a turn of a nut. */
export const turns = constructorOf('turn')
export const days = constructorOf('day')
export const instant = constructorOf('instant')

const MILLISECONDS_PER_DAY = 86_400_000

/**
 * Days from one moment to another, negative when `to` is earlier.
 *
 * @example daysBetween(instant(0), instant(43_200_000)) // → 0.5
 */
export function daysBetween(from: Instant, to: Instant): Day {
  return days((to - from) / MILLISECONDS_PER_DAY)
}

/** @example addDays(instant(0), days(2)) // → 172800000 */
export function addDays(from: Instant, count: Day): Instant {
  return instant(from + count * MILLISECONDS_PER_DAY)
}
