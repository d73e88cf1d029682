import { type Fact, noteWithStem } from '../readings/index.ts'
import type { ProofPlan } from './plan.ts'
import type { ProofDraft } from './proof-draft.ts'
import { isDone } from './steps.ts'

type Repack = Extract<Fact, { kind: 'packing.renewed' }>

/** The repack as it was ticked and read; what nobody did or said is not in it. */
export function repackOf(draft: ProofDraft, plan: ProofPlan): Repack {
  const isStaggered = isDone('rings', draft, plan) && draft.seated > 1
  const isStepped = isDone('load', draft, plan) && plan.loads.length > 1
  return {
    kind: 'packing.renewed',
    family: plan.family,
    cut: plan.cut,
    ...(draft.seated > 0 && { rings: draft.seated }),
    ...(plan.section !== null && { section: plan.section }),
    ...(draft.gapLeft !== null && { gapLeft: draft.gapLeft }),
    ...(draft.gapRight !== null && { gapRight: draft.gapRight }),
    ...(draft.wheel !== null && draft.wheel !== 'not tried' && { proved: draft.wheel === 'no overrun' }),
    ...(isStaggered && { jointsStaggered: true }),
    ...(isStepped && { loadedInSteps: true }),
  }
}

/** A repack has no place for the stem, so it goes with the words. */
export function noteOf({ stem, note }: Pick<ProofDraft, 'stem' | 'note'>): string {
  return noteWithStem(stem, note)
}

/** @example repackInWords(draft) // → 'repacked, 5 rings, no overrun' */
export function repackInWords({ seated, wheel }: Pick<ProofDraft, 'seated' | 'wheel'>): string {
  return ['repacked', seated > 0 && (seated === 1 ? 'one ring' : `${seated} rings`), wheel].filter(Boolean).join(', ')
}
