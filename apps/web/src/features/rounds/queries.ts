import { addStop, changeRound, closeRound, makeRound, type RoundInput, showCarry } from '@glandkeeper/contract/rounds'
import { queryOptions, useMutation } from '@tanstack/react-query'
import type { BodyIn } from '@glandkeeper/contract/endpoint'
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

export function useChangeRound(roundId: string) {
  return useMutation({
    mutationFn: (body: BodyIn<typeof changeRound>) => call(changeRound, { params: { roundId }, body }),
    onSuccess: useSync(),
  })
}

export function useAddStop(roundId: string) {
  return useMutation({
    mutationFn: (tag: string) => call(addStop, { params: { roundId }, body: { tag } }),
    onSuccess: useSync(),
  })
}

export function carryQuery(roundId: string) {
  return queryOptions({
    queryKey: ['carry', roundId],
    queryFn: ({ signal }) => call(showCarry, { params: { roundId }, signal }),
  })
}
