import type { StockItem } from '@glandkeeper/contract/stores'

/** Cord is told in metres to the centimetre, all else in pieces. */
export function amountInWords(amount: number, unit: StockItem['unit']): string {
  const figure = String(Number(amount.toFixed(2))).replace('-', '\u2212')
  if (unit === 'm') return `${figure}\u00a0m`
  return `${figure}\u00a0${figure === '1' ? 'piece' : 'pieces'}`
}
