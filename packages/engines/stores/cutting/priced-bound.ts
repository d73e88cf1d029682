import { gridFor, type Kind, patternsAt } from './best-pattern.ts'
import { type Cord, type Item, roomOf, type Rules } from './job.ts'

/** Sums are counted in no more cells than this. */
const MOST_CELLS = 8_000
/** Cells times parts in one round; with more of them the bound is not worth its time, and reachable sums say as much. */
const MOST_WORK = 200_000
const ROUNDS = 150
/** Rounds without a better bound after which the steps are halved. */
const PATIENCE = 10
/** Sums of thousands of prices miss by less, in tenths of a millimetre. */
const DUST = 0.01

/**
 * What all items waste at the ends of the reels at least, by prices: a reel is paid for each item it cuts, and no reel
 * can gain more than its best pattern does.
 *
 *     waste ≥ Σ price of all items - Σ over the reels of the most that one gains        for any prices
 *
 * The prices that give the most are sought by steps towards the items that the best patterns cut too seldom. With few
 * sizes, as for like valves, it comes near the true least; with many `leastWaste` is as good.
 *
 * @source SRC-774 bound by prices (docs/sources.md)
 * @returns the bound in tenths of a millimetre; minus infinity where it would take too long
 * @example pricedBound([{ length: 80, batch: 'a', rank: 0 }], [{ size: 30 }, { size: 40 }], { cut: 0, keep: 20 }, 10) // → 10
 */
export function pricedBound(cords: readonly Cord[], items: readonly Item[], rules: Rules, found: number): number {
  const kinds = counted(items.map(({ size }) => size)).map(([size, count]): Kind => ({ size, count }))
  const lengths = counted(cords.map(({ length }) => length))
  const grid = gridFor(kinds, Math.max(0, ...cords.map((cord) => roomOf(cord, rules))), MOST_CELLS)
  if (grid.cells * grid.parts.length > MOST_WORK || kinds.some(({ size }) => size < grid.grain)) return -Infinity

  const whole = items.reduce((sum, { size }) => sum + size, 0)
  let prices = kinds.map(({ size }) => (size * Math.max(0, found)) / whole)
  let best = { value: -Infinity, prices }
  let [stride, patience] = [1, PATIENCE]
  for (let round = 0; round < ROUNDS; round += 1) {
    const patternOf = patternsAt(prices, kinds, grid, rules)
    const patterns = lengths.map(([length, count]) => ({ count, ...patternOf(length) }))
    const paid = kinds.reduce((sum, { count }, kind) => sum + count * (prices[kind] ?? 0), 0)
    const value = patterns.reduce((sum, { gain, count }) => sum - gain * count, paid)
    /** Of each kind, how many more there are than the best patterns cut. */
    const lacking = kinds.map((kind, place) =>
      patterns.reduce((left, { counts, count }) => left - (counts[place] ?? 0) * count, kind.count),
    )
    if (value > best.value) [best, patience] = [{ value, prices }, PATIENCE]
    else if ((patience -= 1) === 0) [stride, patience, prices] = [stride / 2, PATIENCE, best.prices]
    const norm = lacking.reduce((sum, each) => sum + each ** 2, 0)
    if (norm === 0) break
    const step = (stride * Math.max(1, found - value)) / norm
    prices = prices.map((price, kind) => price + step * (lacking[kind] ?? 0))
  }
  return Math.ceil(best.value - DUST)
}

/** Each number once, and how often it is there. */
function counted(numbers: readonly number[]): (readonly [number, number])[] {
  const counts = new Map<number, number>()
  for (const number of numbers) counts.set(number, (counts.get(number) ?? 0) + 1)
  return [...counts]
}
