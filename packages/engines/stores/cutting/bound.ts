import { type Cord, type Item, roomOf, type Rules, wasteAt } from './job.ts'
import { reachable } from './reachable.ts'

/** What becomes of one reel, at best. */
interface Chance {
  readonly length: number
  /** The most that can be taken while its end still goes back: that wastes nothing. */
  readonly openTake: number
  /** The most that can be taken beyond that, and what is then wasted; null where nothing ends there. */
  readonly full: { readonly take: number; readonly waste: number } | null
}

/** Sets of full reels that are kept apart; beyond it neighbours are merged, each figure on the side that keeps the bound true. */
const MOST_KEPT = 2_000

/**
 * What all items wasted at the ends of the reels at least, however they are placed.
 *
 *     a reel ends either open (end kept) or full (end wasted); each takes a sum of items that there is
 *     open takes and full takes together are at least all items
 *     waste ≥ Σ least waste of the full reels,  and  ≥ Σ length of the full reels - all items
 *
 * The least over all choices of full reels, by dynamic programming. Both right sides are true for any placing, so each
 * mix of them is: the best of three mixes is taken.
 *
 * @source SRC-772 bound by reachable sums (docs/sources.md)
 * @example leastWaste([{ length: 80, batch: 'a', rank: 0 }], [{ size: 30 }, { size: 40 }], { cut: 0, keep: 20 }) // → 10
 */
export function leastWaste(cords: readonly Cord[], items: readonly Item[], rules: Rules): number {
  const all = items.reduce((sum, { size }) => sum + size, 0)
  if (all === 0) return 0
  const chances = chancesOf(cords, items, rules)
  const lacking = all - chances.reduce((sum, { openTake }) => sum + openTake, 0)
  const bounds = [1, 0.5, 0].map((mix) => {
    const price = ({ length, full }: Chance) => mix * (full?.waste ?? 0) + (1 - mix) * length
    return cheapestCover(chances, lacking, price) - (1 - mix) * all
  })
  return Math.ceil(Math.max(...bounds))
}

function chancesOf(cords: readonly Cord[], items: readonly Item[], rules: Rules): Chance[] {
  const longest = Math.max(0, ...cords.map((cord) => roomOf(cord, rules)))
  const { largestUpTo } = reachable(
    items.map(({ size }) => size),
    longest,
  )
  return cords.map((cord) => {
    const most = largestUpTo(roomOf(cord, rules))
    const openTake = largestUpTo(cord.length - rules.keep)
    const full = most > openTake ? { take: most, waste: wasteAt(cord, most, rules) } : null
    return { length: cord.length, openTake, full }
  })
}

interface Cover {
  readonly take: number
  readonly price: number
}

/** The least price of full reels that take what is lacking. */
function cheapestCover(chances: readonly Chance[], lacking: number, priceOf: (chance: Chance) => number): number {
  let covers: readonly Cover[] = [{ take: 0, price: 0 }]
  for (const chance of chances) {
    if (!chance.full) continue
    const more = chance.full.take - chance.openTake
    const price = priceOf(chance)
    const withIt = covers.map((cover) => ({
      take: Math.min(cover.take + more, Math.max(0, lacking)),
      price: cover.price + price,
    }))
    covers = mergeNeighbours(undominated([...covers, ...withIt]))
  }
  return covers.reduce((least, { take, price }) => (take >= lacking ? Math.min(least, price) : least), Infinity)
}

/** Of covers that take as much only the cheapest, ascending in take and price. */
function undominated(covers: readonly Cover[]): Cover[] {
  const kept: Cover[] = []
  let cheapest = Infinity
  for (const cover of covers.toSorted((one, other) => other.take - one.take || one.price - other.price)) {
    if (cover.price >= cheapest) continue
    cheapest = cover.price
    kept.push(cover)
  }
  return kept.toReversed()
}

function mergeNeighbours(covers: readonly Cover[]): readonly Cover[] {
  if (covers.length <= MOST_KEPT) return covers
  return covers.flatMap(({ price }, place) => {
    const next = covers[place + 1] ?? covers[place]
    return place % 2 === 0 && next ? [{ take: next.take, price }] : []
  })
}
