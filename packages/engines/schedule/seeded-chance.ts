/** Whole numbers that look like chance and are the same for the same seed, on every machine. */
export interface SeededChance {
  /** From 0 up to, not including, `limit`. */
  readonly below: (limit: number) => number
}

/**
 * Chance by a seed: a word of 32 bits that three shifts stir. Good enough to vary a search, not for statistics.
 *
 * @source SRC-752 xorshift generator (docs/sources.md)
 * @returns the same numbers for the same seed; a limit below 1 gives 0
 * @example seededChance(7).below(100) === seededChance(7).below(100) // → true
 */
export function seededChance(seed: number): SeededChance {
  // Nought would stay nought for ever.
  let word = Math.imul(seed | 0, 0x9e3779b1) ^ 0x6d2b79f5 || 1
  const next = () => {
    word ^= word << 13
    word ^= word >>> 17
    word ^= word << 5
    return (word >>> 0) / 4_294_967_296
  }
  // Small seeds start out alike.
  for (let step = 0; step < 8; step++) next()
  return { below: (limit) => (limit > 1 ? Math.floor(next() * limit) : 0) }
}
