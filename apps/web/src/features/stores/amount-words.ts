import type { StockItem } from '@glandkeeper/contract/stores'
import { formatCount } from '../../ui/count.ts'

const NO_BREAK_SPACE = '\u00a0'
const MM_IN_M = 1000

export type Unit = StockItem['unit']

/**
 * An amount for a person: metres to the centimetre, pieces whole.
 *
 * @example formatAmount(16.4, 'm') // → '16.4 m'
 * @example formatAmount(1, 'pc') // → '1 piece'
 */
export function formatAmount(amount: number, unit: Unit): string {
  const rounded = Math.round(amount * 100) / 100
  if (unit === 'm') return `${formatCount(rounded)}${NO_BREAK_SPACE}m`
  return `${formatCount(rounded)}${NO_BREAK_SPACE}${Math.abs(rounded) === 1 ? 'piece' : 'pieces'}`
}

/** @example formatMetres(5525) // → '5.53 m' */
export function formatMetres(millimetres: number): string {
  return formatAmount(millimetres / MM_IN_M, 'm')
}

const thing: Readonly<Record<StockItem['kind'], { readonly lot: string; readonly lots: string }>> = {
  cord: { lot: 'reel', lots: 'reels' },
  'die-formed ring': { lot: 'box', lots: 'boxes' },
  stud: { lot: 'box', lots: 'boxes' },
  nut: { lot: 'box', lots: 'boxes' },
  spacer: { lot: 'box', lots: 'boxes' },
}

/** What comes at once of a kind of item. */
export function lotWord(kind: StockItem['kind']): string {
  return thing[kind].lot
}

export function lotsWord(kind: StockItem['kind']): string {
  return thing[kind].lots
}

/**
 * What an item is, from its figures.
 *
 * @example whatItIs(cord) // → 'cord, graphite braid, 8.0 mm square'
 */
export function whatItIs(
  item: Pick<StockItem, 'kind' | 'family' | 'section' | 'boxBore' | 'stemDiameter' | 'thread' | 'length'>,
): string {
  const { kind, family, section, boxBore, stemDiameter, thread: screw, length } = item
  const size = (value: number) => `${Number(value.toFixed(1))}${NO_BREAK_SPACE}mm`
  return [
    kind,
    family,
    section !== null && `${size(section)} square`,
    boxBore !== null && stemDiameter !== null && `bore ${size(boxBore)}, stem ${size(stemDiameter)}`,
    screw,
    length !== null && `${size(length)} long`,
  ]
    .filter(Boolean)
    .join(', ')
}
