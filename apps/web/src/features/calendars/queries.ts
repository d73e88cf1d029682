import { listCalendarAddresses, makeCalendarAddress, retireCalendarAddress } from '@glandkeeper/contract/calendars'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'

export const calendarAddresses = queryOptions({
  queryKey: ['calendar addresses'],
  queryFn: ({ signal }) => call(listCalendarAddresses, { signal }),
})

function useReadAgain() {
  const queries = useQueryClient()
  return () => queries.invalidateQueries({ queryKey: calendarAddresses.queryKey })
}

export function useMakeAddress() {
  const onSuccess = useReadAgain()
  return useMutation({
    mutationFn: (crewId: string | null) => call(makeCalendarAddress, { body: { crewId } }),
    onSuccess,
    // Shown once: it does not stay in memory after the page.
    gcTime: 0,
  })
}

export function useRetireAddress() {
  const onSuccess = useReadAgain()
  return useMutation({
    mutationFn: (addressId: string) => call(retireCalendarAddress, { params: { addressId } }),
    onSuccess,
  })
}
