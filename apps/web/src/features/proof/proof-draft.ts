import { Cut, RingCause, RingCondition, StemFeel } from '@glandkeeper/contract/events'
import { z } from 'zod'
import { keep, kept } from '../../platform/kept.ts'
import { noSource } from '../readings/index.ts'

/** In the order they are done. */
export const proofSteps = ['rings', 'load', 'wheel', 'gap', 'save'] as const
export type ProofStep = (typeof proofSteps)[number]

const figure = z.number().nullable()
const FoundRing = z.object({ condition: RingCondition, cause: RingCause.optional() })
const Reel = z.object({ lotId: z.uuid(), says: z.string(), unit: z.enum(['m', 'pc']), perRing: figure })

/**
 * How far a repack is, as it is kept on this device until it is saved: somebody is called away, a phone goes dark.
 * Null is not said; of what the cut card says, null takes the card's word.
 */
const ProofDraft = z.object({
  begunAt: z.iso.datetime(),
  at: z.enum(proofSteps),
  rings: z.int().min(1).max(40).nullable(),
  /** Rings go in one over the other, so a count says which. */
  seated: z.int().min(0).max(40),
  loaded: z.int().min(0).max(20),
  wheel: z.enum(['no overrun', 'overran', 'not tried']).nullable(),
  stem: StemFeel.nullable(),
  gapLeft: figure,
  gapRight: figure,
  family: z.string().nullable(),
  section: figure,
  cut: Cut.nullable(),
  note: z.string(),
  /** The old rings as they came out, the one under the follower first. What was begun before there were such is kept. */
  found: z.array(FoundRing).max(40).default([]),
  batch: z.string().default(''),
  reel: Reel.nullable().default(null),
  taken: figure.default(null),
  torque: figure.default(null),
  doneBy: z.enum(['own crew', 'contractor']).nullable().default(null),
  doneByName: z.string().default(''),
})
export type ProofDraft = z.infer<typeof ProofDraft>

export function newDraft(now: Date): ProofDraft {
  return {
    begunAt: now.toISOString(),
    at: 'rings',
    rings: null,
    seated: 0,
    loaded: 0,
    wheel: null,
    stem: null,
    gapLeft: null,
    gapRight: null,
    family: null,
    section: null,
    cut: null,
    note: '',
    found: [],
    ...noSource,
    torque: null,
    doneBy: null,
    doneByName: '',
  }
}

const keyOf = (valveId: string) => `proof ${valveId}`

/** What was begun at this valve on this device; what cannot be read any more is begun anew. */
export const keptDraft = (valveId: string) => kept(keyOf(valveId), ProofDraft)

/** Where the device keeps nothing the steps are on the page only; the save says so when it fails. */
export const keepDraft = (valveId: string, draft: ProofDraft | null) => keep(keyOf(valveId), draft)
