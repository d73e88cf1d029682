import { type Millimetre, mm } from './quantity.ts'

/** Exact by definition since 1959 (international yard and pound agreement). */
export const MILLIMETRES_PER_INCH = 25.4
/** Pressure of one pound-force per square inch in bar: 4.4482216152605 N / (25.4 mm)². */
export const BAR_PER_PSI = 0.0689475729316836

/** @example inchesToMillimetres(0.5) // → 12.7 */
export function inchesToMillimetres(inches: number): Millimetre {
  return mm(inches * MILLIMETRES_PER_INCH)
}

/** @example psiToBar(100) // → 6.89475729316836 */
export function psiToBar(psi: number): number {
  return psi * BAR_PER_PSI
}

/** @example fahrenheitToCelsius(212) // → 100 */
export function fahrenheitToCelsius(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9
}
