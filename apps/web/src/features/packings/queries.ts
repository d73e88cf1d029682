import type { BodyIn } from '@glandkeeper/contract/endpoint'
import { addFamily, advisePacking, changeFamily, listFamilies } from '@glandkeeper/contract/packings'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'

export const siteFamilies = queryOptions({
  queryKey: ['packings'],
  queryFn: ({ signal }) => call(listFamilies, { signal }),
})

/** What is packed in a valve against its service, and what else would suit. */
export function packingAdvice(tag: string) {
  return queryOptions({
    queryKey: ['packing-advice', tag],
    queryFn: ({ signal }) => call(advisePacking, { params: { tag }, signal }),
  })
}

/** Everything judged with the figures is read again, after a refusal too: somebody else may have changed them. */
function useReadAgain() {
  const queries = useQueryClient()
  return () => queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'session' })
}

export function useChangeFamily(family: string) {
  const readAgain = useReadAgain()
  return async (body: BodyIn<typeof changeFamily>) => {
    try {
      await call(changeFamily, { params: { family }, body })
    } finally {
      await readAgain()
    }
  }
}

export function useAddFamily() {
  const readAgain = useReadAgain()
  return useMutation({ mutationFn: (body: BodyIn<typeof addFamily>) => call(addFamily, { body }), onSuccess: readAgain })
}
