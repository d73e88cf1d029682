import type { FoundRing, RingCause, RingCondition } from '@glandkeeper/contract/events'

/** More than any box holds. */
const MOST = 40

/** Says the chosen ring anew, or the next one: a tap for each as it comes out. */
export function withCondition(found: readonly FoundRing[], at: number | null, condition: RingCondition): FoundRing[] {
  if (at === null) return found.length < MOST ? [...found, { condition }] : [...found]
  return found.map((ring, index) => (index === at ? { ...ring, condition } : ring))
}

/** The likely cause of one ring; null takes it away. */
export function withCause(found: readonly FoundRing[], at: number, cause: RingCause | null): FoundRing[] {
  return found.map(({ condition, ...ring }, index) => {
    if (index !== at) return { condition, ...ring }
    return cause === null ? { condition } : { condition, cause }
  })
}

export function without(found: readonly FoundRing[], at: number): FoundRing[] {
  return found.filter((_, index) => index !== at)
}

/** As many as the set is to have, all like the last one that was said. */
export function allAlike(found: readonly FoundRing[], rings: number): FoundRing[] {
  const last = found.at(-1)
  return last ? [...found, ...Array.from({ length: Math.max(0, rings - found.length) }, () => ({ ...last }))] : []
}

/** @example foundInShort([{ condition: 'hard' }, { condition: 'hard' }]) // → '2 said' */
export function foundInShort(found: readonly FoundRing[]): string {
  return found.length === 0 ? 'not said' : `${found.length} said`
}
