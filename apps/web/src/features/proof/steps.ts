import type { GapVerdict } from './gap-verdict.ts'
import { takenOf } from '../readings/index.ts'
import { type ProofPlan, WRAPS_MORE } from './plan.ts'
import type { ProofDraft, ProofStep } from './proof-draft.ts'

/** What the one big button does next, and in which words. Null where a choice or a figure is wanted first. */
export interface NextAct {
  readonly words: string
  readonly small: string
  readonly change: Partial<ProofDraft>
}

/** Whether a step is done, by what was ticked and read. */
export function isDone(step: ProofStep, draft: ProofDraft, { rings, loads }: ProofPlan): boolean {
  switch (step) {
    case 'rings':
      return rings !== null && draft.seated >= rings
    case 'load':
      return draft.loaded >= loads.length
    case 'wheel':
      return draft.wheel !== null
    case 'gap':
      return draft.gapLeft !== null && draft.gapRight !== null
    case 'save':
      return false
  }
}

/**
 * One after the other: a ring, then the next; the last tick of a step goes on to the step after it. Where the gap asks
 * for one more ring, that is the next act: to save it as it is takes a touch on the last step.
 */
export function nextAct(draft: ProofDraft, plan: ProofPlan, verdict: GapVerdict['verdict'] | null): NextAct | null {
  switch (draft.at) {
    case 'rings': {
      const joint = plan.joints[draft.seated]
      if (plan.rings === null) return null
      if (!joint) return { words: 'Next: load it', small: 'every ring is in', change: { at: 'load' } }
      return {
        words: `Ring ${joint.ring} is in`,
        small: plan.jointsAreUsual ? 'seated and tamped by itself' : `joint at ${joint.clock}, seated and tamped by itself`,
        change: { seated: draft.seated + 1 },
      }
    }
    case 'load': {
      const load = plan.loads[draft.loaded]
      if (!load) return { words: 'Next: try the wheel', small: 'loaded', change: { at: 'wheel' } }
      return {
        words: load.torque === null ? 'Loaded' : `${load.torque.toFixed(1)} N·m done`,
        small: 'a quarter turn at a time, alternately, equally',
        change: { loaded: draft.loaded + 1 },
      }
    }
    case 'wheel':
      return draft.wheel === null ? null : { words: 'Next: read the gaps', small: draft.wheel, change: { at: 'gap' } }
    case 'gap':
      if (!isDone('gap', draft, plan)) return null
      if (verdict === 'one more ring' && plan.rings !== null)
        return { words: 'One more ring', small: 'back to step 1 for it', change: withOneMoreRing(draft, plan.rings) }
      return { words: 'Next: look it over', small: 'then save', change: { at: 'save' } }
    case 'save':
      return null
  }
}

/**
 * Another ring is a ring to seat, and everything after it is done again: what was loaded and read was another set. It is
 * cut from the same reel, so what was said to be taken goes up by it.
 */
export function withOneMoreRing(draft: ProofDraft, rings: number): ProofDraft {
  return {
    ...draft,
    at: 'rings',
    rings: rings + 1,
    seated: Math.min(draft.seated, rings),
    loaded: 0,
    wheel: null,
    stem: null,
    gapLeft: null,
    gapRight: null,
    torque: null,
    taken: draft.taken !== null && draft.reel?.perRing != null ? toCentimetre(draft.taken + draft.reel.perRing) : draft.taken,
  }
}

const toCentimetre = (amount: number) => Math.round(amount * 100) / 100

/** Taking a tick away takes away those after it: a ring is not out from under another. */
export function ticked(count: number, tick: number): number {
  return tick === count + 1 ? tick : Math.min(count, tick - 1)
}

/** What was left out, for the question before it is saved. Nothing is refused: what was done was done. */
export function leftOut(draft: ProofDraft, plan: ProofPlan): string[] {
  const { rings, loads } = plan
  return [
    rings === null && 'How many rings went in is not said.',
    rings !== null && draft.seated < rings && `${draft.seated} of ${rings} rings are ticked: the entry will say ${draft.seated}.`,
    draft.loaded < loads.length &&
      `${draft.loaded} of ${loads.length} load steps are ticked: the entry will not say it was loaded in steps.`,
    draft.wheel === null && 'The wheel was not tried: the entry will not say it is proved.',
    draft.gapLeft === null && draft.gapRight === null && 'No gap was read: what travel is left will not be known.',
    draft.reel !== null &&
      takenOf(draft, rings, WRAPS_MORE) === null &&
      'How much was taken from the reel is not said: the store will not know of it.',
  ].filter((line) => line !== false)
}
