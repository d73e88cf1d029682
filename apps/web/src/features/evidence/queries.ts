import {
  cancelProof,
  checkEvidence,
  countEvidence,
  type EvidenceScope,
  proveChain,
  showChain,
  showSiteKey,
} from '@glandkeeper/contract/evidence'
import { showBoard } from '@glandkeeper/contract/board'
import { keepPreviousData, queryOptions, skipToken, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'

const LOOK_EVERY_MS = 400

/** Looked at often while the chain is walked. */
export const chainOfSite = queryOptions({
  queryKey: ['evidence', 'chain'],
  queryFn: ({ signal }) => call(showChain, { signal }),
  refetchInterval: ({ state }) => (typeof state.data?.share === 'number' ? LOOK_EVERY_MS : false),
})

function useProofChange<Output>(change: () => Promise<Output>) {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: change,
    onSettled: () => queries.invalidateQueries({ queryKey: chainOfSite.queryKey }),
  })
}

export const useProveChain = () => useProofChange(() => call(proveChain))
export const useCancelProof = () => useProofChange(() => call(cancelProof))

/** Null while it is not yet said what to count. */
export const entriesIn = (scope: EvidenceScope | null) =>
  queryOptions({
    queryKey: ['evidence', 'count', scope],
    queryFn: scope === null ? skipToken : ({ signal }) => call(countEvidence, { query: scope, signal }),
  })

export const siteKey = queryOptions({
  queryKey: ['evidence', 'key'],
  queryFn: ({ signal }) => call(showSiteKey, { signal }),
})

const MOST_OFFERED = '8'

/** Tags that hold what is typed. */
export const tagsLike = (typed: string) =>
  queryOptions({
    queryKey: ['evidence', 'tags', typed],
    queryFn:
      typed === ''
        ? skipToken
        : async ({ signal }) => {
            const { rows } = await call(showBoard, { query: { find: typed, order: 'tag', limit: MOST_OFFERED }, signal })
            return rows.map(({ tag }) => tag)
          },
    placeholderData: keepPreviousData,
  })

export function useCheckFile() {
  return useMutation({
    mutationFn: async (file: File) => call(checkEvidence, { body: new Uint8Array(await file.arrayBuffer()) }),
  })
}
