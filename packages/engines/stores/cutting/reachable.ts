import { commonStep } from './sums.ts'

const BITS = 32

/** Which sums of some sizes there are, and how each comes about. */
export interface Reachable {
  /** The largest sum up to a limit; 0 is always one. */
  readonly largestUpTo: (limit: number) => number
  /** Places of the sizes that make up a sum there is; sizes given first are preferred. */
  readonly partsOf: (sum: number) => readonly number[]
}

/**
 * All sums of some of these whole sizes up to a limit; or, once the limit itself is reached, as many as that took.
 * A bit stands for each sum, counted in steps of the largest number that divides all sizes.
 *
 * @source SRC-770 reachable sums (docs/sources.md)
 * @example reachable([30, 20, 20], 60).largestUpTo(48) // → 40
 * @example reachable([30, 20, 20], 60).partsOf(50) // → [1, 0]
 */
export function reachable(sizes: readonly number[], limit: number, isEnoughAtLimit = false): Reachable {
  const step = commonStep(sizes)
  const last = Math.floor(Math.max(0, limit) / step)
  const words = new Uint32Array(Math.floor(last / BITS) + 1)
  words[0] = 1
  /** The size that first reached each sum. */
  const reachedBy = new Int16Array(words.length * BITS).fill(-1)
  for (const [part, size] of sizes.entries()) {
    reachFurther(words, reachedBy, size / step, part)
    if (isEnoughAtLimit && reachedBy[last] !== -1 && last * step === limit) break
  }

  const partsOf = (sum: number) => {
    const parts: number[] = []
    for (let cell = sum / step; cell > 0;) {
      const part = reachedBy[cell] ?? -1
      if (part === -1) break
      parts.push(part)
      cell -= (sizes[part] ?? 0) / step
    }
    return parts
  }
  const largestUpTo = (most: number) => {
    let cell = Math.min(last, Math.floor(most / step))
    while (cell > 0 && reachedBy[cell] === -1) cell -= 1
    return Math.max(0, cell) * step
  }
  return { largestUpTo, partsOf }
}

/** From above downwards, so that no size is taken twice. */
function reachFurther(words: Uint32Array, reachedBy: Int16Array, shift: number, part: number): void {
  const whole = Math.floor(shift / BITS)
  const bits = shift % BITS
  for (let word = words.length - 1; word >= whole; word -= 1) {
    const above = (words[word - whole] ?? 0) << bits
    const below = bits === 0 || word === whole ? 0 : (words[word - whole - 1] ?? 0) >>> (BITS - bits)
    const had = words[word] ?? 0
    let fresh = (above | below) & ~had
    if (fresh === 0) continue
    words[word] = had | fresh
    while (fresh !== 0) {
      const bit = BITS - 1 - Math.clz32(fresh)
      reachedBy[word * BITS + bit] = part
      fresh ^= 1 << bit
    }
  }
}
