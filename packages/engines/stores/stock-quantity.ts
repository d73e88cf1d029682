import { constructorOf, type Quantity } from '@glandkeeper/units/quantity'

/** An amount of one item in what it is counted in: millimetres of cord, pieces of anything else. */
export type StockAmount = Quantity<'of an item'>

/** `stockAmount(8000)` is a reel of 8 m, or 8,000 nuts. Throws RangeError for NaN and the infinities. */
export const stockAmount = constructorOf('of an item')
