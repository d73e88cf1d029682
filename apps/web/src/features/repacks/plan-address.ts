import { SlotId } from '@glandkeeper/contract/repack-plans'

/** What the page shows: kept in its address, so that it can be sent to somebody, and the way back leads back. */
export interface PlanView {
  /** Null shows the plan in use, or the newest. */
  readonly planId: string | null
  /** `none` for those that wait; null for all valves of the plan. */
  readonly slot: string | null
  readonly skip: number
  /** First fortnight drawn. */
  readonly from: number
  readonly isTable: boolean
}

export function planViewOf(address: URLSearchParams): PlanView {
  const slot = address.get('slot')
  return {
    planId: address.get('plan'),
    slot: slot === 'none' || SlotId.safeParse(slot).success ? slot : null,
    skip: countIn(address.get('skip')),
    from: countIn(address.get('from')),
    isTable: address.get('as') === 'table',
  }
}

function countIn(text: string | null): number {
  return text !== null && /^\d{1,7}$/.test(text) ? Number(text) : 0
}

/**
 * The query part of the address of a view, with what changes. Another plan has other slots; another slot begins at its top.
 *
 * @example withView({ planId: null, slot: 'none', skip: 50, from: 0, isTable: false }, { slot: null }) // → '?'
 */
export function withView(view: PlanView, change: Partial<PlanView>): string {
  const isOtherPlan = change.planId !== undefined && change.planId !== view.planId
  const fresh = isOtherPlan ? { slot: null, skip: 0, from: 0 } : change.slot !== undefined ? { skip: 0 } : {}
  const { planId, slot, skip, from, isTable } = { ...view, ...fresh, ...change }
  const address = new URLSearchParams()
  if (planId !== null) address.set('plan', planId)
  if (slot !== null) address.set('slot', slot)
  if (skip > 0) address.set('skip', String(skip))
  if (from > 0) address.set('from', String(from))
  if (isTable) address.set('as', 'table')
  return `?${address.toString()}`
}

/** The plan to show: the one asked for, the one in use, the newest that is no question, the newest. */
export function planToShow<Head extends { readonly planId: string; readonly isInUse: boolean; readonly whatIf: unknown }>(
  plans: readonly Head[],
  asked: string | null,
): Head | null {
  return (
    plans.find(({ planId }) => planId === asked) ??
    plans.find(({ isInUse }) => isInUse) ??
    plans.find(({ whatIf }) => whatIf === null) ??
    plans[0] ??
    null
  )
}
