import { type Ph, ph } from './acidity.ts'

export interface PhRange {
  readonly lowest: Ph
  readonly highest: Ph
}

/** What the name of a fluid gives away. Null is not known, and is never taken for harmless. */
export interface FluidTraits {
  /** The words the traits are taken from; null when no word of the name is known. */
  readonly knownAs: string | null
  readonly ph: PhRange | null
  readonly isOxidising: boolean | null
}

type Known = readonly [words: string, lowestPh: number, highestPh: number, isOxidising: boolean | null]

/** The more particular name stands before the more general one: chlorine dioxide water is no water. */
const known: readonly Known[] = [
  ['chlorine dioxide', 2, 4, true],
  ['hydrogen peroxide', 2, 5, true],
  ['hypochlorite', 10, 13, true],
  ['chlorine', 1, 4, true],
  ['ozone', 4, 8, true],
  ['oxygen', 6, 8, true],
  ['nitric acid', 0, 1, true],
  ['chromic acid', 0, 1, true],
  ['sulphuric acid', 0, 1, null],
  ['hydrochloric acid', 0, 1, false],
  ['acetic acid', 2, 4, false],
  ['phosphoric acid', 0, 2, false],
  ['caustic soda', 13, 14, false],
  ['sodium hydroxide', 13, 14, false],
  ['lime', 11, 13, false],
  ['alum', 2, 4, false],
  ['condensate', 5, 9.5, false],
  ['feed water', 8, 10, false],
  ['boiler water', 9, 12, false],
  ['white water', 5, 8, false],
  ['fresh water', 6, 8.5, false],
  ['sea water', 7.5, 8.5, false],
  ['cooling water', 6.5, 9, false],
  ['hot water', 6, 9, false],
  ['fibre stock', 5, 8.5, false],
  ['starch', 5, 8, false],
  ['coating colour', 7.5, 9.5, false],
  ['effluent', 5, 9, false],
  ['sludge', 5, 9, false],
  ['oil', 6, 8, false],
  ['methanol', 6, 8, false],
  ['steam', 6, 9.5, false],
  ['compressed air', 6, 8, false],
  ['nitrogen', 6, 8, false],
  ['natural gas', 6, 8, false],
]

/**
 * pH and oxidising power of a fluid, as far as its name is known to the list.
 * It knows nothing of strength or of what is dissolved: `water` alone is not in the list on purpose.
 *
 * @source SRC-611 fluids by name, from memory (docs/sources.md)
 * @returns nulls when no name of the list is in it
 * @example fluidTraits('Caustic soda, 50 %') // → { knownAs: 'caustic soda', ph: { lowest: 13, highest: 14 }, isOxidising: false }
 * @example fluidTraits('liquor') // → { knownAs: null, ph: null, isOxidising: null }
 */
export function fluidTraits(fluid: string): FluidTraits {
  const plain = ` ${fluid
    .toLowerCase()
    .replaceAll(/[^\p{L}]+/gu, ' ')
    .trim()} `
  const found = known.find(([words]) => plain.includes(` ${words} `))
  if (!found) return { knownAs: null, ph: null, isOxidising: null }
  const [knownAs, lowest, highest, isOxidising] = found
  return { knownAs, ph: { lowest: ph(lowest), highest: ph(highest) }, isOxidising }
}
