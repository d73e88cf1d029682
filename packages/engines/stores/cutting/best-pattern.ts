import type { Rules } from './job.ts'
import { commonStep } from './sums.ts'

/** Items of one size. */
export interface Kind {
  readonly size: number
  readonly count: number
}

/** What one reel gains at best by cutting items at their prices, and how many of each kind it then cuts. */
export interface Pattern {
  readonly gain: number
  readonly counts: readonly number[]
}

/** Some items of a kind, taken together or not at all: 1, 2, 4 … of them make up every number. */
interface Part {
  readonly kind: number
  readonly many: number
  readonly cells: number
}

/** Sums are counted in cells of so many tenths. */
export interface Grid {
  readonly grain: number
  readonly cells: number
  readonly parts: readonly Part[]
}

/** A grid over all sums up to the longest reel: exact where one step divides all sizes, else not finer than asked. */
export function gridFor(kinds: readonly Kind[], longest: number, mostCells: number): Grid {
  const step = commonStep(kinds.map(({ size }) => size))
  const grain = Math.max(step, Math.ceil(longest / mostCells))
  const parts = kinds.flatMap(({ size, count }, kind) =>
    doubling(Math.min(count, Math.floor(longest / size))).map((many) => ({ kind, many, cells: Math.floor(size / grain) * many })),
  )
  return { grain, cells: Math.floor(longest / grain) + 1, parts }
}

/**
 * The best pattern of a reel of any length, at prices for which a reel is paid to cut an item. Sizes are taken down to
 * whole cells and what is wasted is taken at its least, so that no true pattern gains more.
 */
export function patternsAt(
  prices: readonly number[],
  kinds: readonly Kind[],
  grid: Grid,
  rules: Rules,
): (length: number) => Pattern {
  const { grain, cells, parts } = grid
  const worth = new Float64Array(cells).fill(-Infinity)
  worth[0] = 0
  const isTaken = parts.map((part) => takePart(worth, part, (prices[part.kind] ?? 0) * part.many))
  const fewest = Math.min(...kinds.map(({ size }) => Math.floor(size / grain)))
  /** Each item may be a cell less one tenth longer than it counts, unless cells divide it. */
  const over = kinds.some(({ size }) => size % grain > 0) ? grain - 1 : 0
  const leastWaste = (length: number, cell: number) => {
    if (cell * grain <= length - rules.keep) return 0
    return length - Math.min(length + rules.cut, cell * grain + over * Math.floor(cell / fewest))
  }
  return (length) => {
    let [gain, best] = [0, 0]
    for (let cell = 1; cell * grain <= length + rules.cut; cell += 1) {
      const own = (worth[cell] ?? -Infinity) - leastWaste(length, cell)
      if (own > gain) [gain, best] = [own, cell]
    }
    return { gain, counts: countsAt(best, kinds, parts, isTaken) }
  }
}

/** Adds a part to the sums it betters, from above downwards so that it is taken once, and says to which. */
function takePart(worth: Float64Array, { cells }: Part, price: number): Uint8Array {
  const isTaken = new Uint8Array(worth.length)
  for (let cell = worth.length - 1; cell >= cells; cell -= 1) {
    const own = (worth[cell - cells] ?? -Infinity) + price
    if (!(own > (worth[cell] ?? Infinity))) continue
    worth[cell] = own
    isTaken[cell] = 1
  }
  return isTaken
}

function countsAt(from: number, kinds: readonly Kind[], parts: readonly Part[], isTaken: readonly Uint8Array[]): number[] {
  const counts = kinds.map(() => 0)
  let cell = from
  for (const [place, { kind, many, cells }] of [...parts.entries()].toReversed()) {
    if (isTaken[place]?.[cell] !== 1) continue
    counts[kind] = (counts[kind] ?? 0) + many
    cell -= cells
  }
  return counts
}

function doubling(count: number): number[] {
  const parts: number[] = []
  for (let [left, many] = [count, 1]; left > 0; left -= many, many *= 2) parts.push(Math.min(many, left))
  return parts
}
