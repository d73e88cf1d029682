import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { Cut } from '@glandkeeper/contract/events'
import { jointPositions, LEAST_STAGGER } from '@glandkeeper/engines/gland/joints'
import { degrees } from '@glandkeeper/units/quantity'
import type { z } from 'zod'
import type { ProofDraft } from './proof-draft.ts'

export type CardForProof = Pick<CutCard, 'rings' | 'joints' | 'steps' | 'family' | 'form' | 'cord' | 'cut'>

export interface PlannedLoad {
  /** N·m on each nut; null where it was not worked out. */
  readonly torque: number | null
  readonly says: string
}

/** What is to be done at this valve, of the cut card and what was said otherwise; null is not known. */
export interface ProofPlan {
  readonly rings: number | null
  /** Where each joint goes, the first ring in first. */
  readonly joints: readonly { readonly ring: number; readonly clock: string }[]
  /** True where the card has no joints: then each is only said to be a quarter round and more from the one below. */
  readonly jointsAreUsual: boolean
  readonly loads: readonly PlannedLoad[]
  readonly family: string
  readonly section: number | null
  readonly cut: z.infer<typeof Cut>
  /** Of one ring at mid-width, mm; rings that are pressed to size have none. */
  readonly ringLength: number | null
}

/** Wraps that are wound beside the rings of a set: the first and last are never whole. */
export const WRAPS_MORE = 1

/** @param card null where none can be had: the steps are done all the same */
export function planOf(card: CardForProof | null, draft: Pick<ProofDraft, 'rings' | 'family' | 'section' | 'cut'>): ProofPlan {
  const rings = draft.rings ?? card?.rings?.count ?? null
  return {
    rings,
    joints: rings === null ? [] : jointsFor(rings, card?.joints ?? []),
    jointsAreUsual: (card?.joints.length ?? 0) < 2,
    loads: loadsOf(card?.steps ?? []),
    family: draft.family ?? card?.family ?? 'unknown',
    section: draft.section ?? (card?.cord ? Number(card.cord.space.toFixed(1)) : null),
    cut: draft.cut ?? cutOf(card),
    ringLength: card?.cut?.length ?? null,
  }
}

/** A ring more than the card has goes on as the card's do. */
function jointsFor(rings: number, known: CutCard['joints']): ProofPlan['joints'] {
  const [first, second] = known
  const stagger = first && second ? degrees((second.angle - first.angle + 360) % 360) : LEAST_STAGGER
  const found = jointPositions({ rings, stagger })
  return found.ok ? found.joints : []
}

/** Pressing each ring home by hand belongs to the rings; the rest is done at the nuts. */
function loadsOf(steps: CutCard['steps']): PlannedLoad[] {
  const atTheNuts = steps.filter(({ torque }) => torque !== null)
  if (atTheNuts.length > 0) return atTheNuts
  return [{ torque: null, says: 'torque not worked out: load as the site procedure says, and ask before it is guessed' }]
}

function cutOf(card: CardForProof | null): ProofPlan['cut'] {
  if (card?.form === 'die-formed') return 'die-formed'
  if (!card?.cut) return 'unknown'
  return card.cut.angle === 90 ? 'butt' : 'skive'
}
