import type { Quantity } from '@glandkeeper/units/quantity'

export type KilojoulePerKilogram = Quantity<'kJ/kg'>
export type CubicMetrePerKilogram = Quantity<'m³/kg'>

/** `kilojoulesPerKilogram(418.991)`: heat above that of liquid water at its triple point. Throws RangeError when not finite. */
export function kilojoulesPerKilogram(value: number): KilojoulePerKilogram {
  return finite(value, 'kJ/kg') as KilojoulePerKilogram
}

/** `cubicMetresPerKilogram(1.673)`: room one kilogram takes. Throws RangeError when not finite. */
export function cubicMetresPerKilogram(value: number): CubicMetrePerKilogram {
  return finite(value, 'm³/kg') as CubicMetrePerKilogram
}

function finite(value: number, unitName: string): number {
  if (!Number.isFinite(value)) throw new RangeError(`a quantity in ${unitName} must be finite, got ${value}`)
  return value
}
