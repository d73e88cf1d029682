import { showLeakLosses } from '@glandkeeper/contract/leak-losses'
import { cancelLeakStudy, makeLeakStudy, showLeakStudy, type StudyPeriod } from '@glandkeeper/contract/leak-study'
import { listLeaks, showLeaksByMonth } from '@glandkeeper/contract/leaks'
import { keepPreviousData, queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'
import { type LeakFilters, type LeakView, PAGE } from './leak-address.ts'

const leaksKey = ['leaks'] as const
const studyKey = ['leak study'] as const

export const leakList = ({ filters, order, skip }: LeakView) =>
  queryOptions({
    queryKey: [...leaksKey, 'list', filters, order, skip],
    queryFn: ({ signal }) => call(listLeaks, { query: { ...filters, order, offset: String(skip), limit: String(PAGE) }, signal }),
    placeholderData: keepPreviousData,
  })

export const leaksByMonth = ({ area, service }: Pick<LeakFilters, 'area' | 'service'>) =>
  queryOptions({
    queryKey: [...leaksKey, 'by month', area, service],
    queryFn: ({ signal }) => call(showLeaksByMonth, { query: { area, service }, signal }),
    placeholderData: keepPreviousData,
  })

export const leakLosses = queryOptions({
  queryKey: [...leaksKey, 'losses'],
  queryFn: ({ signal }) => call(showLeakLosses, { signal }),
})

const LOOK_EVERY_MS = 500

/** Looked at often while a study is made. */
export const leakStudy = (period: StudyPeriod) =>
  queryOptions({
    queryKey: [...studyKey, period],
    queryFn: ({ signal }) => call(showLeakStudy, { query: { period }, signal }),
    refetchInterval: ({ state }) => ((state.data?.share ?? null) === null ? false : LOOK_EVERY_MS),
    placeholderData: keepPreviousData,
  })

/** Every period is read again, and how long packings last, which is made with it. */
export function useReadStudyAgain() {
  const queries = useQueryClient()
  return () =>
    queries.invalidateQueries({ predicate: ({ queryKey: [first] }) => first === studyKey[0] || first === 'packing lives' })
}

export function useMakeStudy() {
  const onSettled = useReadStudyAgain()
  return useMutation({ mutationFn: () => call(makeLeakStudy), onSettled })
}

export function useCancelStudy() {
  const onSettled = useReadStudyAgain()
  return useMutation({ mutationFn: () => call(cancelLeakStudy), onSettled })
}
