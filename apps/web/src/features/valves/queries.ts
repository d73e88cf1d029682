import { showValve } from '@glandkeeper/contract/valves'
import { queryOptions } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'

/** One valve with its whole history, as the valve page and the log page show it. */
export function valveQuery(tag: string) {
  return queryOptions({
    queryKey: ['valve', tag],
    queryFn: ({ signal }) => call(showValve, { params: { tag }, signal }),
  })
}
