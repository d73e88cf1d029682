import { VALVES_IN_A_PART } from '@glandkeeper/contract/job-packs'
import { groupedBy } from '../../platform/grouped-by.ts'

/**
 * Valves of an outage in parts that can be printed at once: boundaries in the order in which they are met, each whole in
 * one part unless it alone is more than a part.
 *
 * @param valves each with what a plan knows its boundary by
 * @example inParts([{ isolatedAs: 'a' }, { isolatedAs: 'b' }], 1).length // → 2
 */
export function inParts<Valve extends { readonly isolatedAs: string }>(
  valves: readonly Valve[],
  most: number = VALVES_IN_A_PART,
): Valve[][] {
  const parts: Valve[][] = []
  for (const boundary of groupedBy(valves, ({ isolatedAs }) => isolatedAs).values())
    for (let from = 0; from < boundary.length; from += most) {
      const piece = boundary.slice(from, from + most)
      const last = parts.at(-1)
      if (last && last.length + piece.length <= most) last.push(...piece)
      else parts.push(piece)
    }
  return parts
}
