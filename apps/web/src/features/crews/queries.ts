import {
  addCrew,
  addDaysOff,
  changeAreaWalk,
  changeCrew,
  listAreaWalks,
  listCrews,
  listDaysOff,
  removeDaysOff,
  retireCrew,
} from '@glandkeeper/contract/crews'
import type { BodyIn } from '@glandkeeper/contract/endpoint'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'

export const crewsOfSite = queryOptions({ queryKey: ['crews'], queryFn: ({ signal }) => call(listCrews, { signal }) })

export const daysOffOfSite = queryOptions({ queryKey: ['days off'], queryFn: ({ signal }) => call(listDaysOff, { signal }) })

export const areaWalks = queryOptions({ queryKey: ['area walks'], queryFn: ({ signal }) => call(listAreaWalks, { signal }) })

/** Crews and days off show in plans, areas and calendars: all of it is read again, but for forms that are being filled. */
function useReadAgain() {
  const queries = useQueryClient()
  return () => queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'register' })
}

/** Adds a crew, or changes the one given. */
export function useSaveCrew(crewId: string | null) {
  const onSuccess = useReadAgain()
  return useMutation({
    mutationFn: (body: BodyIn<typeof addCrew>) =>
      crewId === null ? call(addCrew, { body }) : call(changeCrew, { params: { crewId }, body }),
    onSuccess,
  })
}

export function useRetireCrew(crewId: string) {
  const onSuccess = useReadAgain()
  return useMutation({ mutationFn: () => call(retireCrew, { params: { crewId } }), onSuccess })
}

export function useAddDaysOff() {
  const onSuccess = useReadAgain()
  return useMutation({ mutationFn: (body: BodyIn<typeof addDaysOff>) => call(addDaysOff, { body }), onSuccess })
}

export function useRemoveDaysOff(daysOffId: string) {
  const onSuccess = useReadAgain()
  return useMutation({ mutationFn: () => call(removeDaysOff, { params: { daysOffId } }), onSuccess })
}

export function useChangeAreaWalk(code: string) {
  const onSuccess = useReadAgain()
  return useMutation({
    mutationFn: (body: BodyIn<typeof changeAreaWalk>) => call(changeAreaWalk, { params: { code }, body }),
    onSuccess,
  })
}
