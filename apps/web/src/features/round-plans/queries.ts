import type { BodyIn } from '@glandkeeper/contract/endpoint'
import {
  cancelPlanning,
  dropPlan,
  listVisits,
  makePlan,
  moveBlock,
  pinVisit,
  showMoves,
  showPlanning,
  showPlans,
  takePlan,
  unpinVisit,
} from '@glandkeeper/contract/round-plans'
import { makeRoundsOfPlan } from '@glandkeeper/contract/rounds'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'
import { useSync } from '../pocket/index.tsx'

const plansKey = ['round plans'] as const

export const plansQuery = queryOptions({ queryKey: plansKey, queryFn: ({ signal }) => call(showPlans, { signal }) })

const LOOK_EVERY_MS = 400

/** Looked at often while a plan is made. */
export const planningQuery = queryOptions({
  queryKey: ['planning'],
  queryFn: ({ signal }) => call(showPlanning, { signal }),
  refetchInterval: ({ state }) => (state.data?.share === null ? false : LOOK_EVERY_MS),
})

export function movesQuery(planId: string) {
  return queryOptions({
    queryKey: [...plansKey, 'moves', planId],
    queryFn: ({ signal }) => call(showMoves, { params: { planId }, signal }),
  })
}

export function visitsQuery(query: { planId: string; week: number; areaCode: string; crewId: string }) {
  const { week, ...rest } = query
  return queryOptions({
    queryKey: [...plansKey, 'visits', query],
    queryFn: ({ signal }) => call(listVisits, { query: { ...rest, week: String(week) }, signal }),
  })
}

export function visitsOfValve(tag: string) {
  return queryOptions({
    queryKey: [...plansKey, 'valve', tag],
    queryFn: ({ signal }) => call(listVisits, { query: { tag }, signal }),
  })
}

/** After anything that changes a plan, everything read from plans is read anew. */
function usePlanChange<Input, Output>(change: (input: Input) => Promise<Output>) {
  const client = useQueryClient()
  return useMutation({
    mutationFn: change,
    onSettled: async () => {
      await client.invalidateQueries({ queryKey: plansKey })
      await client.invalidateQueries({ queryKey: planningQuery.queryKey })
    },
  })
}

export const useMakePlan = () => usePlanChange((body: BodyIn<typeof makePlan>) => call(makePlan, { body }))
export const useCancelPlanning = () => usePlanChange(() => call(cancelPlanning))
export const useTakePlan = () => usePlanChange((planId: string) => call(takePlan, { params: { planId } }))
export const useDropPlan = () => usePlanChange((planId: string) => call(dropPlan, { params: { planId } }))
export const usePinVisit = () => usePlanChange((body: BodyIn<typeof pinVisit>) => call(pinVisit, { body }))
export const useUnpinVisit = () => usePlanChange((body: BodyIn<typeof unpinVisit>) => call(unpinVisit, { body }))
export const useMoveBlock = (planId: string) =>
  usePlanChange((body: BodyIn<typeof moveBlock>) => call(moveBlock, { params: { planId }, body }))

/** Rounds that are made are on the phones, this one too. */
export function useMakeRounds() {
  const client = useQueryClient()
  const sync = useSync()
  return useMutation({
    mutationFn: (body: BodyIn<typeof makeRoundsOfPlan>) => call(makeRoundsOfPlan, { body }),
    onSuccess: async () => {
      await client.invalidateQueries({ queryKey: plansKey })
      await sync()
    },
  })
}
