import type { BodyIn } from '@glandkeeper/contract/endpoint'
import {
  addOutage,
  callOffOutage,
  changeOutage,
  endOutage,
  listOutages,
  type Outage,
  reviewOutage,
} from '@glandkeeper/contract/outages'
import {
  cancelRepackPlanning,
  compareRepackPlans,
  dropRepackPlan,
  listRepackPlans,
  makeRepackPlan,
  showRepackPlan,
  showRepackPlanning,
  takeRepackPlan,
} from '@glandkeeper/contract/repack-plans'
import { listPlannedRepacks, type PlannedRepack } from '@glandkeeper/contract/planned-repacks'
import { moveRepack, pinRepack, unpinRepack } from '@glandkeeper/contract/repack-pins'
import { keepPreviousData, queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'

const plansKey = ['repack plans'] as const

export const keptPlans = queryOptions({
  queryKey: [...plansKey, 'kept'],
  queryFn: ({ signal }) => call(listRepackPlans, { signal }),
})

const LOOK_EVERY_MS = 400

/** Looked at often while a plan is made. */
export const planningNow = queryOptions({
  queryKey: ['repack planning'],
  queryFn: ({ signal }) => call(showRepackPlanning, { signal }),
  refetchInterval: ({ state }) => (state.data?.share === null ? false : LOOK_EVERY_MS),
})

export const planById = (planId: string) =>
  queryOptions({
    queryKey: [...plansKey, 'plan', planId],
    queryFn: ({ signal }) => call(showRepackPlan, { params: { planId }, signal }),
  })

/** `none` for those that wait, null for all. */
export const repacksOf = (planId: string, slot: string | null, skip: number) =>
  queryOptions({
    queryKey: [...plansKey, 'repacks', planId, slot, skip],
    queryFn: ({ signal }) =>
      call(listPlannedRepacks, {
        params: { planId },
        query: { ...(slot !== null && { slotId: slot }), ...(skip > 0 && { skip: String(skip) }) },
        signal,
      }),
    placeholderData: keepPreviousData,
  })

const MOST_READ = 2000

/** Valves of a plan in one piece: the server gives them in portions. */
export const allRepacksOf = (planId: string) =>
  queryOptions({
    queryKey: [...plansKey, 'all repacks', planId],
    queryFn: async ({ signal }) => {
      const repacks: PlannedRepack[] = []
      let total = 0
      do {
        const query = repacks.length > 0 ? { skip: String(repacks.length) } : {}
        const portion = await call(listPlannedRepacks, { params: { planId }, query, signal })
        total = portion.total
        if (portion.repacks.length === 0) break
        repacks.push(...portion.repacks)
      } while (repacks.length < Math.min(total, MOST_READ))
      return { repacks, total }
    },
  })

export const plansCompared = (planId: string, otherId: string) =>
  queryOptions({
    queryKey: [...plansKey, 'compared', planId, otherId],
    queryFn: ({ signal }) => call(compareRepackPlans, { params: { planId, otherId }, signal }),
  })

/** After anything that changes a plan, everything read from plans is read anew. */
function usePlanChange<Input, Output>(change: (input: Input) => Promise<Output>) {
  const client = useQueryClient()
  return useMutation({
    mutationFn: change,
    onSettled: async () => {
      await client.invalidateQueries({ queryKey: plansKey })
      await client.invalidateQueries({ queryKey: planningNow.queryKey })
    },
  })
}

export const useMakePlan = () => usePlanChange((body: BodyIn<typeof makeRepackPlan>) => call(makeRepackPlan, { body }))
export const useCancelPlanning = () => usePlanChange(() => call(cancelRepackPlanning))

/** Of a plan that is gone nothing is read again: the page is about to show another. */
export function useDropPlan() {
  const client = useQueryClient()
  return useMutation({
    mutationFn: (planId: string) => call(dropRepackPlan, { params: { planId } }),
    onSuccess: (_, planId) =>
      client.invalidateQueries({ queryKey: plansKey, predicate: ({ queryKey }) => !queryKey.includes(planId) }),
  })
}
export const useMoveRepack = (planId: string) =>
  usePlanChange((body: BodyIn<typeof moveRepack>) => call(moveRepack, { params: { planId }, body }))
export const usePinRepack = () => usePlanChange((body: BodyIn<typeof pinRepack>) => call(pinRepack, { body }))
export const useUnpinRepack = () => usePlanChange((body: BodyIn<typeof unpinRepack>) => call(unpinRepack, { body }))

/** An outage, or another plan in use, shows on the board, on valves and in the store: all of it is read again. */
function useReadAgain() {
  const client = useQueryClient()
  return () => client.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'register' })
}

export function useTakePlan() {
  const onSettled = useReadAgain()
  return useMutation({ mutationFn: (planId: string) => call(takeRepackPlan, { params: { planId } }), onSettled })
}

export const outagesOfSite = queryOptions({
  queryKey: ['outages'],
  queryFn: ({ signal }) => call(listOutages, { signal }),
})

export const reviewOf = (outageId: string) =>
  queryOptions({
    queryKey: ['outages', 'review', outageId],
    queryFn: ({ signal }) => call(reviewOutage, { params: { outageId }, signal }),
  })

/** Adds an outage, or changes the one given. */
export function useSaveOutage(outage: Outage | null) {
  const onSuccess = useReadAgain()
  return useMutation({
    mutationFn: (body: BodyIn<typeof addOutage>) =>
      outage === null
        ? call(addOutage, { body })
        : call(changeOutage, { params: { outageId: outage.outageId }, body: { revision: outage.revision, outage: body } }),
    onSuccess,
  })
}

export function useEndOutage({ outageId, revision }: Outage) {
  const onSuccess = useReadAgain()
  return useMutation({
    mutationFn: (days: { startedOn: string; endedOn: string }) =>
      call(endOutage, { params: { outageId }, body: { revision, ...days } }),
    onSuccess,
  })
}

export function useCallOffOutage({ outageId, revision }: Outage) {
  const onSuccess = useReadAgain()
  return useMutation({ mutationFn: () => call(callOffOutage, { params: { outageId }, body: { revision } }), onSuccess })
}
