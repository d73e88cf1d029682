import { closeRound, makeRound, type RoundInput } from '@glandkeeper/contract/rounds'
import { useMutation } from '@tanstack/react-query'
import type { z } from 'zod'
import { call } from '../../platform/client.ts'
import { useSync } from '../pocket/index.tsx'

// Rounds are read from the pocket register, so that is brought up to date after a change.

export function useMakeRound() {
  return useMutation({
    mutationFn: (body: z.input<typeof RoundInput>) => call(makeRound, { body }),
    onSuccess: useSync(),
  })
}

export function useCloseRound() {
  return useMutation({
    mutationFn: (roundId: string) => call(closeRound, { params: { roundId } }),
    onSuccess: useSync(),
  })
}
