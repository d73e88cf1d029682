import { addArea, changeArea, listAreas, type AreaInput } from '@glandkeeper/contract/areas'
import { addValve, changeValve, retireValve, showValve, type ValveInput } from '@glandkeeper/contract/valves'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import type { z } from 'zod'
import { call } from '../../platform/client.ts'

export const siteAreas = queryOptions({
  queryKey: ['areas'],
  queryFn: ({ signal }) => call(listAreas, { signal }),
})

/** The valve as the form starts from it: never changed under the hands of the person filling it. */
export const valveToChange = (tag: string) =>
  queryOptions({
    queryKey: ['register', 'valve', tag],
    queryFn: ({ signal }) => call(showValve, { params: { tag }, signal }),
    staleTime: 0,
    gcTime: 0,
    refetchOnWindowFocus: false,
    refetchOnReconnect: false,
  })

/** A change of the register shows on the board, on valve pages and in the areas: all of it is read again. */
function useReadAgain() {
  const queries = useQueryClient()
  return () => queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'register' })
}

export function useSaveArea(code: string | null) {
  const readAgain = useReadAgain()
  return useMutation({
    mutationFn: (body: z.input<typeof AreaInput>) =>
      code === null ? call(addArea, { body }) : call(changeArea, { params: { code }, body }),
    onSuccess: readAgain,
  })
}

export function useAddValve() {
  const readAgain = useReadAgain()
  return useMutation({ mutationFn: (body: ValveInput) => call(addValve, { body }), onSuccess: readAgain })
}

export function useChangeValve(tag: string) {
  const readAgain = useReadAgain()
  return useMutation({
    mutationFn: (body: { revision: number; valve: ValveInput }) => call(changeValve, { params: { tag }, body }),
    onSuccess: readAgain,
  })
}

export function useRetireValve(tag: string) {
  const readAgain = useReadAgain()
  return useMutation({
    mutationFn: (body: { revision: number; reason: string }) => call(retireValve, { params: { tag }, body }),
    onSuccess: readAgain,
  })
}
