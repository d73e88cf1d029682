import { constructorOf, type Quantity } from '@glandkeeper/units/quantity'

export type KilojoulePerKilogram = Quantity<'kJ/kg'>
export type CubicMetrePerKilogram = Quantity<'m³/kg'>

/** `kilojoulesPerKilogram(418.991)`: heat above that of liquid water at its triple point. Throws RangeError when not finite. */
export const kilojoulesPerKilogram = constructorOf('kJ/kg')

/** `cubicMetresPerKilogram(1.673)`: room one kilogram takes. Throws RangeError when not finite. */
export const cubicMetresPerKilogram = constructorOf('m³/kg')
