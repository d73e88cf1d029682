import { cutFromReels } from '@glandkeeper/engines/stores/cut-from-reels'
import { mm } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'

interface Published {
  readonly roll: number
  readonly pieces: readonly (readonly [length: number, count: number])[]
}

/**
 * A paper machine, 13 widths from rolls of 5600 mm: 407,160 mm in all, 73 rolls at the fewest, 0.401 % wasted.
 * Wikipedia, Cutting stock problem, https://en.wikipedia.org/wiki/Cutting_stock_problem, read in a stored copy.
 */
const thirteenWidths: Published = {
  roll: 5600,
  pieces: [
    [1380, 22],
    [1520, 25],
    [1560, 12],
    [1710, 14],
    [1820, 18],
    [1880, 18],
    [1930, 20],
    [2000, 10],
    [2050, 12],
    [2100, 14],
    [2140, 16],
    [2150, 18],
    [2200, 20],
  ],
}

/**
 * V. Chvátal, Linear Programming, 1983, chapter 13: rolls of 100 inches, at least 452.25 of them by its linear programme,
 * read in https://github.com/JuliaOpt/juliaopt-notebooks, notebooks/Chiwei Yan - Cutting Stock.ipynb. In whole rolls 453, by
 * hand: 48 times 45 + 45, 105 times 36 + 36 + 14 + 14, 100 times 36 + 36, 197 times 36 + 31 + 31, and for what is left
 * 45 + 36 + 14, 36 + 36 and 31.
 */
const fourWidths: Published = {
  roll: 100,
  pieces: [
    [45, 97],
    [36, 610],
    [31, 395],
    [14, 211],
  ],
}
const LEAST_OF_ITS_PROGRAMME = 452.25

function cut({ roll, pieces }: Published, rolls: number) {
  const found = cutFromReels({
    reels: Array.from({ length: rolls }, (_, at) => ({ id: `R${at}`, batch: 'B', length: mm(roll), expiresOn: null })),
    // Each piece is a set of its own; no end goes back, so that whole rolls count.
    pieces: pieces.flatMap(([length, count]) =>
      Array.from({ length: count }, (_, at) => ({
        id: `${length}/${at}`,
        setId: `${length}/${at}`,
        length: mm(length),
        count: 1,
      })),
    ),
    sawCut: mm(0),
    keepLength: mm(roll),
  })
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

describe('13 widths from rolls of 5600', () => {
  const { totals, reels, notCut } = cut(thirteenWidths, 73)

  it('are all cut from the 73 rolls that are the fewest: 407,160 mm, and 0.401 % of the rolls wasted', () => {
    expect(notCut).toEqual([])
    expect(reels.length).toBe(73)
    expect(totals.cut).toBe(407_160)
    expect(100 * totals.wastedShare).toBeCloseTo(0.401, 3)
  })

  it('are proved to waste no less: the bound is what is wasted', () => expect(totals.bound).toBe(totals.wasted))

  it('begin at most one roll more where there are ten to spare', () => {
    const spare = cut(thirteenWidths, 83)
    expect(spare.notCut).toEqual([])
    expect(spare.reels.length).toBeLessThanOrEqual(74)
    expect(spare.totals.bound).toBe(totals.wasted)
  }, 20_000)
})

describe('4 widths from rolls of 100', () => {
  const { totals, reels, notCut } = cut(fourWidths, 463)

  it('are cut from at most 1 % more than the 453 rolls that are the fewest, and never from fewer', () => {
    expect(notCut).toEqual([])
    expect(totals.cut).toBe(45 * 97 + 36 * 610 + 31 * 395 + 14 * 211)
    expect(reels.length).toBeGreaterThanOrEqual(453)
    expect(reels.length).toBeLessThanOrEqual(457)
  })

  it('have a bound by prices within a tenth of a roll of the published linear programme, and not above it', () => {
    const rolls = (totals.cut + totals.bound) / 100
    expect(rolls).toBeLessThanOrEqual(LEAST_OF_ITS_PROGRAMME + 1e-9)
    expect(rolls).toBeGreaterThan(LEAST_OF_ITS_PROGRAMME - 0.1)
  })
})
