import { constructorOf, type Quantity } from '@glandkeeper/units/quantity'

/** Acid or caustic on the usual scale: 7 is neutral, below it acid, above it caustic. */
export type Ph = Quantity<'pH'>

/** `ph(7)` is neutral. Throws RangeError for NaN and the infinities. */
export const ph = constructorOf('pH')
