import { showLog } from '@glandkeeper/contract/log'
import { keepPreviousData, queryOptions } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'
import { filtersOf, type LogView, PAGE } from './log-address.ts'

/** The page before stays until the next one arrives. */
export const logPage = (view: LogView) =>
  queryOptions({
    queryKey: ['log', view],
    queryFn: ({ signal }) =>
      call(showLog, { query: { ...filtersOf(view), offset: String(view.skip), limit: String(PAGE) }, signal }),
    placeholderData: keepPreviousData,
  })
