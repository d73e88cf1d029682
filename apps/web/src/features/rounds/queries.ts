import { closeRound, makeRound, type RoundInput } from '@glandkeeper/contract/rounds'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { z } from 'zod'
import { call } from '../../platform/client.ts'
import { useMe } from '../people/index.tsx'
import { pocketKey } from '../pocket/queries.ts'
import { syncPocket } from '../pocket/index.tsx'

/** Rounds are read from the pocket register, so that is brought up to date after a change. */
function useAfterChange() {
  const queries = useQueryClient()
  const { personId } = useMe()
  return async () => {
    await syncPocket(personId)
    await queries.invalidateQueries({ queryKey: pocketKey })
  }
}

export function useMakeRound() {
  return useMutation({
    mutationFn: (body: z.input<typeof RoundInput>) => call(makeRound, { body }),
    onSuccess: useAfterChange(),
  })
}

export function useCloseRound() {
  return useMutation({
    mutationFn: (roundId: string) => call(closeRound, { params: { roundId } }),
    onSuccess: useAfterChange(),
  })
}
