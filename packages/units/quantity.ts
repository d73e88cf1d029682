/**
 * A finite number that carries its unit in the type only: no cost at run time.
 * Engines compute in one set throughout: mm, turns, days, °C, bar above atmosphere, MPa for stress, N, N·m.
 */
declare const unit: unique symbol
export type Quantity<Unit extends string> = number & { readonly [unit]: Unit }

export type Millimetre = Quantity<'mm'>
export type Turn = Quantity<'turn'>
export type Day = Quantity<'day'>
/** A plain ratio: friction, nut factor, share of a whole. */
export type Ratio = Quantity<'ratio'>
export type Degree = Quantity<'°'>
export type SquareMillimetre = Quantity<'mm²'>
/** Stress of packing and studs: newtons per square millimetre. */
export type Megapascal = Quantity<'MPa'>
/** Pressure above atmosphere, as a gauge in a plant shows it. */
export type Bar = Quantity<'bar'>
/** Pressure above vacuum, as steam tables and flow formulas take it. */
export type BarAbsolute = Quantity<'bar abs'>
export type Celsius = Quantity<'°C'>
export type Newton = Quantity<'N'>
export type NewtonMetre = Quantity<'N·m'>
export type KilogramPerHour = Quantity<'kg/h'>
export type LitrePerDay = Quantity<'L/d'>
export type Millilitre = Quantity<'mL'>
/** Parts per million by volume. */
export type Ppmv = Quantity<'ppmv'>
/** Milliseconds since 1970-01-01T00:00Z: a moment, not a duration. */
export type Instant = Quantity<'instant'>

/**
 * The constructor of a unit: what only one engine measures in, that engine names beside itself.
 *
 * @example constructorOf('pH')(7) // → 7
 */
export const constructorOf =
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
export const ratio = constructorOf('ratio')
export const degrees = constructorOf('°')
export const mm2 = constructorOf('mm²')
export const megapascals = constructorOf('MPa')
export const bar = constructorOf('bar')
export const barAbsolute = constructorOf('bar abs')
export const celsius = constructorOf('°C')
export const newtons = constructorOf('N')
export const newtonMetres = constructorOf('N·m')
export const kilogramsPerHour = constructorOf('kg/h')
export const litresPerDay = constructorOf('L/d')
export const millilitres = constructorOf('mL')
export const ppmv = constructorOf('ppmv')

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

/** The standard atmosphere: 101 325 Pa by definition. */
const STANDARD_ATMOSPHERE_BAR = 1.01325

/** @example absolute(bar(3)) // → 4.01325 */
export function absolute(gauge: Bar): BarAbsolute {
  return barAbsolute(gauge + STANDARD_ATMOSPHERE_BAR)
}
