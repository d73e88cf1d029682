/** Length of one drawn link, and how far the next one reaches into it. */
export const LINK = 22
const OVERLAP = 4
const PITCH = LINK - OVERLAP

export interface ChainState {
  readonly entries: number
  /** Entries up to here were walked by the last proof and found good. */
  readonly provedTo: number
  /** The entry at which the chain is broken. */
  readonly brokenAt: number | null
  /** The entry whose head was signed last. */
  readonly sealedAt: number | null
}

export interface DrawnLink {
  readonly x: number
  /** Every second link of a chain is seen from its edge. */
  readonly isEdge: boolean
  /** Solid is proved; dashed is not, or not yet. */
  readonly isProved: boolean
  readonly isBroken: boolean
}

/** A chain of as many links as there is room for, each of them standing for the same share of the entries. */
export function drawChain(
  state: ChainState,
  width: number,
): { links: readonly DrawnLink[]; breakX: number | null; sealX: number | null } {
  const { entries, provedTo, brokenAt, sealedAt } = state
  const room = Math.max(1, Math.floor((width - OVERLAP) / PITCH))
  const count = Math.min(room, entries)
  const linkOf = (position: number) => Math.min(count - 1, Math.max(0, Math.floor(((position - 1) / entries) * count)))
  // What is not proved shows, however little of the whole it is.
  const proved = provedTo <= 0 ? 0 : provedTo >= entries ? count : Math.min(linkOf(provedTo) + 1, count - 1)
  const broken = brokenAt === null || count === 0 ? null : linkOf(brokenAt)
  const links = Array.from({ length: count }, (_, index) => ({
    x: index * PITCH,
    isEdge: index % 2 === 1,
    isProved: index < (broken ?? proved),
    isBroken: index === broken,
  }))
  const middleOf = (index: number) => index * PITCH + LINK / 2
  return {
    links,
    breakX: broken === null ? null : middleOf(broken),
    sealX: sealedAt === null || count === 0 ? null : middleOf(linkOf(sealedAt)),
  }
}
