import { showLeakHistory } from '@glandkeeper/contract/leaks'
import { queryOptions } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'

export const leakHistoryOf = (tag: string) =>
  queryOptions({
    queryKey: ['valve', tag, 'leaks'],
    queryFn: ({ signal }) => call(showLeakHistory, { params: { tag }, signal }),
  })
