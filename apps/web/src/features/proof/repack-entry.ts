import { type Fact, noteWithStem, sourceFacts } from '../readings/index.ts'
import { type ProofPlan, WRAPS_MORE } from './plan.ts'
import type { ProofDraft } from './proof-draft.ts'
import { isDone } from './steps.ts'

type Repack = Extract<Fact, { kind: 'packing.renewed' }>

/** The repack as it was ticked and read; what nobody did or said is not in it. */
export function repackOf(draft: ProofDraft, plan: ProofPlan): Repack {
  const isStaggered = isDone('rings', draft, plan) && draft.seated > 1
  const torque = torqueReached(draft, plan)
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
    ...(torque !== null && { torque }),
    ...(draft.found.length > 0 && { found: draft.found }),
    ...(draft.doneBy !== null && { doneBy: { kind: draft.doneBy, name: draft.doneByName } }),
    ...sourceFacts(draft, plan.rings, WRAPS_MORE),
  }
}

/** As somebody said, else that of the last step where every step is ticked: it was pressed as done. */
export function torqueReached(draft: ProofDraft, plan: ProofPlan): number | null {
  if (draft.torque !== null) return draft.torque
  return isDone('load', draft, plan) ? (plan.loads.at(-1)?.torque ?? null) : null
}

/** A repack has no place for the stem, so it goes with the words. */
export function noteOf({ stem, note }: Pick<ProofDraft, 'stem' | 'note'>): string {
  return noteWithStem(stem, note)
}

/** @example repackInWords(draft) // → 'repacked, 5 rings, no overrun' */
export function repackInWords({ seated, wheel }: Pick<ProofDraft, 'seated' | 'wheel'>): string {
  return ['repacked', seated > 0 && (seated === 1 ? 'one ring' : `${seated} rings`), wheel].filter(Boolean).join(', ')
}
