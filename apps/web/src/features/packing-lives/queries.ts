import { comparePackings } from '@glandkeeper/contract/packing-lives'
import { keepPreviousData, queryOptions } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'
import type { LivesView } from './lives-address.ts'

const LOOK_AGAIN_MS = 2000

/** Looked at again until the first study is there: the server begins it when somebody comes for it. */
export const packingLives = ({ service, heat }: LivesView) =>
  queryOptions({
    queryKey: ['packing lives', service, heat],
    queryFn: ({ signal }) => call(comparePackings, { query: { ...(service !== null && { service }), heat }, signal }),
    refetchInterval: ({ state }) => (state.data?.madeAt === null ? LOOK_AGAIN_MS : false),
    placeholderData: keepPreviousData,
  })
